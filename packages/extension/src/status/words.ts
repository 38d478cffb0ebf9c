import type { FitState } from '@dryfit/language/protocol';

/** What the status item reads. */
export interface Words {
  readonly text: string;
  readonly detail: string;
  readonly severity: 'information' | 'warning' | 'error';
}

export interface Worked {
  /** Whether cabinets are worked out at all. */
  readonly joinery: boolean;
  readonly thickness: 'measured' | 'nominal';
}

/** How a file stands, in words: never "fits" where nothing was worked out. */
export function statusWords(state: FitState | undefined, worked: Worked): Words {
  if (state === undefined) return { text: '$(watch) Not worked out yet', detail: '', severity: 'information' };
  const { joinery, thickness } = worked;
  const from = joinery ? `${units(state)}, ${thickness} thickness` : units(state);
  const found = counts(state);
  if (state.state === 'broken')
    return { text: '$(error) Text cannot be read', detail: `${found}; ${from}`, severity: 'error' };
  if (state.errors + state.warnings > 0 || state.state === 'findings') {
    const severity = state.errors > 0 ? 'error' : state.warnings > 0 ? 'warning' : 'information';
    const icon = severity === 'information' ? 'info' : severity;
    return { text: `$(${icon}) ${found}`, detail: joinery ? from : `joinery is switched off; ${from}`, severity };
  }
  if (!joinery)
    return { text: '$(circle-slash) Text is sound, joinery is switched off', detail: from, severity: 'warning' };
  const [only, ...more] = state.cabinets;
  if (only === undefined) return { text: '$(check) Nothing is wrong', detail: from, severity: 'information' };
  const text = more.length === 0 ? `${only} fits` : `${state.cabinets.length} cabinets fit`;
  return { text: `$(check) ${text}`, detail: from, severity: 'information' };
}

const units = ({ units: unit }: FitState): string => (unit === 'in' ? 'inches' : 'millimetres');

function counts({ errors, warnings }: FitState): string {
  const one = (count: number, word: string) => (count === 0 ? [] : [`${count} ${word}${count === 1 ? '' : 's'}`]);
  return [...one(errors, 'error'), ...one(warnings, 'warning')].join(', ') || 'notes only';
}
