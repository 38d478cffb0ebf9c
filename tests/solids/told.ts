import type { Fit } from '@dryfit/engine';
import { type Finding, type Piece, Rational, type Spec } from '@dryfit/engine';
import type { Kind } from './measure.js';

/** What the engine says, by kind and key: the figures it gives, in mm. */
export type Told = ReadonlyMap<Kind, ReadonlyMap<string, readonly number[]>>;

const number = (piece: Piece | undefined): number | undefined =>
  piece === undefined || typeof piece === 'string'
    ? undefined
    : piece instanceof Rational
      ? piece.toNumber()
      : piece.value;

/** Findings put in the words of the measurements. Of several about one thing the worst counts. */
export function toldBy(findings: readonly Finding[], spec: Spec, fit: Fit): Told {
  const told = new Map<Kind, Map<string, readonly number[]>>();
  const tell = (kind: Kind, key: string, figures: readonly number[]): void => {
    const of = told.get(kind) ?? new Map<string, readonly number[]>();
    told.set(kind, of);
    const before = of.get(key);
    if (!before || (figures[0] ?? 0) < (before[0] ?? 0)) of.set(key, figures);
  };
  for (const finding of findings) read(finding, spec, fit, tell);
  return told;
}

function read(
  finding: Finding,
  spec: Spec,
  fit: Fit,
  tell: (kind: Kind, key: string, figures: readonly number[]) => void,
): void {
  const { code, message, about, data } = finding;
  const { parts = [], slots = [], statement = '' } = about;
  const { limits } = spec.shop;
  const length = (name: string): number | undefined => {
    const text = data?.[name];
    return typeof text === 'string' ? Rational.parse(text)?.toNumber() : undefined;
  };
  const after = (words: string): number | undefined => {
    const at = message.findIndex((piece) => typeof piece === 'string' && piece.endsWith(words));
    return at < 0 ? undefined : number(message[at + 1]);
  };
  const given = (figure: number | undefined): readonly number[] => (figure === undefined ? [] : [figure]);
  switch (code) {
    case 'slots-collide': {
      const apart = after('come within ');
      for (const part of parts) tell(code, part, [apart ?? 0]);
      return;
    }
    case 'pair-too-short':
      tell(code, `${statement}|${parts[0]}`, []);
      return;
    case 'slot-near-edge': {
      const out = after(' edge by ');
      const left = out === undefined ? after('leaves ') : -out;
      for (const slot of slots) tell(code, slot, given(left));
      return;
    }
    case 'thin-wall': {
      const short = length('short');
      for (const part of parts)
        tell(code, `${part}|${statement}`, given(short === undefined ? undefined : limits.wall.toNumber() - short));
      return;
    }
    case 'slot-breaks-through': {
      const [depth, most] = [length('depth'), length('most')];
      const left =
        depth !== undefined && most !== undefined && most > 0 ? limits.skin.toNumber() + most - depth : undefined;
      for (const part of parts) tell(code, `${part}|${statement}`, given(left));
      return;
    }
    case 'mitre-no-room': {
      if (finding.severity !== 'error') return;
      const [skin, heel] = [after('leaves '), after(') and ')];
      tell(code, statement, skin === undefined || heel === undefined ? [] : [skin, heel]);
      return;
    }
    case 'parts-overlap':
      tell(
        code,
        [...parts].sort().join('|'),
        message.flatMap((piece) => number(piece) ?? []),
      );
      return;
    case 'connector-binds':
    case 'connector-too-long':
    case 'joint-bottoms-out': {
      const joint = fit.joints.find(({ id }) => id === about.joint);
      const name = joint?.connector?.name;
      if (name !== undefined)
        tell('connector-binds', name, code === 'connector-binds' ? [length('slot') ?? -1, bindsBy(message)] : []);
      return;
    }
  }
}

/** The last length of the message: by how much it binds. */
const bindsBy = (message: Finding['message']): number =>
  message.flatMap((piece) => number(piece) ?? []).at(-1) ?? Number.NaN;
