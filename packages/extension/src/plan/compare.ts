import type { PlannedSetUp, PlanRows } from '@dryfit/language/protocol';

/** A plan as it stood, as far as another is compared with it. */
export interface Base {
  /** When it stood so, ms since 1970. */
  readonly at: number;
  readonly change: string;
  readonly mill: string;
  readonly setUps: readonly BaseSetUp[];
}

export interface BaseSetUp {
  readonly settings: readonly { readonly name: string; readonly words: string }[];
  readonly rows: readonly BaseRow[];
}

interface BaseRow {
  readonly keys: readonly string[];
  readonly label: string;
  readonly cells: readonly { readonly heading: string; readonly text: string }[];
}

/** What has become of a set-up. */
export interface Change {
  readonly kind: 'same' | 'changed' | 'new';
  /** Its number in the plan before, from 1. */
  readonly was?: number | undefined;
  /** What differs: "stop 32 → 40". */
  readonly words: readonly string[];
}

export interface Compared {
  /** One for each set-up there is now. */
  readonly setUps: readonly Change[];
  /** Set-ups there are no more, with where their parts are now. */
  readonly gone: readonly { readonly was: number; readonly words: string }[];
  /** Minutes before and now, where they differ. */
  readonly minutes: readonly string[];
  /** Set-ups that are changed, new or gone. */
  readonly touched: number;
}

/** What of a plan is kept to compare later ones with. */
export function baseOf({ change, mill, setUps }: Pick<PlanRows, 'change' | 'mill' | 'setUps'>, at: number): Base {
  return {
    at,
    change,
    mill,
    setUps: setUps.map((setUp) => ({
      settings: setUp.settings.map(({ name, words }) => ({ name, words })),
      rows: rowsOf(setUp),
    })),
  };
}

/**
 * Which set-ups of a plan an edit has touched. A set-up is the one it was if all that is set is as it was; else the one
 * whose pieces it has most of. A set-up that only comes earlier or later than it did is the same.
 */
export function compare(base: Base, plan: Pick<PlanRows, 'change' | 'mill' | 'setUps'>): Compared {
  const now = baseOf(plan, base.at);
  const was = matched(base.setUps, now.setUps);
  const setUps = now.setUps.map((setUp, i): Change => {
    const from = was[i];
    const before = from === undefined ? undefined : base.setUps[from];
    if (from === undefined || before === undefined) return { kind: 'new', words: [listed(setUp.rows.map(labelOf))] };
    const set = settingWords(before, setUp);
    const words = [...set, ...rowWords(before, setUp, set.length > 0)];
    return { kind: words.length > 0 ? 'changed' : 'same', was: from + 1, words };
  });
  const gone = base.setUps.flatMap((setUp, i) =>
    was.includes(i) ? [] : [{ was: i + 1, words: goneWords(setUp, now.setUps) }],
  );
  const minutes = [
    ...(base.change === now.change ? [] : [`changing ${base.change} → ${now.change} min`]),
    ...(base.mill === now.mill ? [] : [`milling ${base.mill} → ${now.mill} min`]),
  ];
  return { setUps, gone, minutes, touched: gone.length + setUps.filter(({ kind }) => kind !== 'same').length };
}

/** For each set-up now, which it was before: pairs that are set alike first, then those with most pieces in common. */
function matched(before: readonly BaseSetUp[], now: readonly BaseSetUp[]): readonly (number | undefined)[] {
  const pairs = now.flatMap((setUp, i) =>
    before.map((other, j) => ({ i, j, alike: settingKey(setUp) === settingKey(other), common: common(setUp, other) })),
  );
  const was = now.map((): number | undefined => undefined);
  const taken = new Set<number>();
  const ranked = pairs
    .filter(({ alike, common }) => alike || common > 0)
    .sort((a, b) => Number(b.alike) - Number(a.alike) || b.common - a.common || a.i - b.i || a.j - b.j);
  for (const { i, j } of ranked) {
    if (was[i] !== undefined || taken.has(j)) continue;
    was[i] = j;
    taken.add(j);
  }
  return was;
}

const settingKey = ({ settings }: BaseSetUp): string =>
  settings.map(({ name, words }) => `${name} ${words}`).join('\n');
const keysOf = ({ rows }: BaseSetUp): readonly string[] => rows.flatMap(({ keys }) => keys);

function common(a: BaseSetUp, b: BaseSetUp): number {
  const own = new Set(keysOf(a));
  return keysOf(b).filter((key) => own.has(key)).length;
}

/** "stop 32 → 40". */
function settingWords(before: BaseSetUp, now: BaseSetUp): readonly string[] {
  return now.settings.flatMap(({ name, words }) => {
    const old = before.settings.find((one) => one.name === name)?.words;
    return old === words ? [] : [`${name} ${old ?? 'none'} → ${words}`];
  });
}

/**
 * Pieces that have come or gone, and what is done otherwise to those that have stayed; where something else is set, only
 * what does not follow from that.
 */
function rowWords(before: BaseSetUp, now: BaseSetUp, isSetAnew: boolean): readonly string[] {
  const [old, here] = [new Set(keysOf(before)), new Set(keysOf(now))];
  const come = now.rows.filter(({ keys }) => keys.some((key) => !old.has(key)));
  const left = before.rows.filter(({ keys }) => keys.some((key) => !here.has(key)));
  const otherwise = new Map<string, string[]>();
  for (const row of now.rows) {
    const then = before.rows.find(
      ({ keys }) => keys.length === row.keys.length && keys.every((key) => row.keys.includes(key)),
    );
    for (const words of then ? cellWords(then, row, isSetAnew) : [])
      otherwise.set(words, [...(otherwise.get(words) ?? []), row.label]);
  }
  return [
    ...(come.length > 0 ? [`now also ${listed(come.map(labelOf))}`] : []),
    ...(left.length > 0 ? [`no longer ${listed(left.map(labelOf))}`] : []),
    ...shortened([...otherwise].map(([words, labels]) => `${words} (${listed(labels)})`)),
  ];
}

/** Columns that tell which piece it is, and nothing of how it is milled. */
const NAMING = ['Cabinet', 'Part', 'Weight'];
/** Columns that do not follow from what is set. */
const OWN = ['Pieces', 'Mill into', 'Lines used'];

function cellWords(then: BaseRow, now: BaseRow, isSetAnew: boolean): readonly string[] {
  return now.cells.flatMap(({ heading, text }) => {
    const old = then.cells.find((cell) => cell.heading === heading)?.text ?? '';
    // "Lines used (mm)"
    const name = heading.replace(/ \(\w+\)$/, '');
    if (old === text || NAMING.includes(name) || (isSetAnew && !OWN.includes(name))) return [];
    return [`${name.slice(0, 1).toLowerCase()}${name.slice(1)} ${old || 'none'} → ${text || 'none'}`];
  });
}

function goneWords(setUp: BaseSetUp, now: readonly BaseSetUp[]): string {
  const keys = keysOf(setUp);
  const places = now.flatMap((other, i) => (keysOf(other).some((key) => keys.includes(key)) ? [String(i + 1)] : []));
  const what = listed(setUp.rows.map(labelOf));
  if (places.length === 0) return `${what}: nothing of it is milled any more`;
  return `${what}: now in set-up ${listed(places)}`;
}

function rowsOf({ columns, rows }: PlannedSetUp): readonly BaseRow[] {
  return rows.map(({ keys, cells }) => {
    const named = cells.map((text, i) => ({ heading: columns[i]?.heading ?? '', text }));
    const cell = (heading: string) => named.find((one) => one.heading === heading)?.text ?? '';
    const cabinet = cell('Cabinet');
    return { keys, label: cabinet === '' ? cell('Part') : `${cell('Part')} of ${cabinet}`, cells: named };
  });
}

const labelOf = ({ label }: BaseRow): string => label;

/** Names that are told before the rest is only counted. */
const MOST = 4;

function listed(names: readonly string[]): string {
  const once = [...new Set(names)];
  return shortened(once).join(', ');
}

const shortened = (words: readonly string[]): readonly string[] =>
  words.length <= MOST ? words : [...words.slice(0, MOST - 1), `${words.length - MOST + 1} more`];
