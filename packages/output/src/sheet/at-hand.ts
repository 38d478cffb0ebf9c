import { consumablesOf, holdingOf, type LengthFormat, type Packer, type SetUp, say, type Text } from '@dryfit/engine';
import { type ConsumableLine, consumableLines } from '../consumables/lines.js';
import { shopOf } from '../plan/holding.js';
import { fenceWords, spacerCounts, spacersOf } from '../plan/spacers.js';
import type { PlannedJob } from '../plan/tables.js';
import { listed, spacerWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import type { Flow } from './flow.js';

/** What has to be there before a job begins: what is used up, and what is set up. */
export function atHand(flow: Flow, job: PlannedJob, format: LengthFormat): void {
  const { items, plan } = job;
  const entries = [...consumableLines(consumablesOf(items)).map(usedUp), ...tools(plan.setUps, shopOf(job))];
  if (entries.length === 0) return;
  flow.heading('To have at hand');
  let before = '';
  for (const { label, words, under } of entries) {
    flow.ticked(printText(words, format), printText(under, format), label === before ? '' : label);
    before = label;
  }
}

interface Entry {
  readonly label: string;
  readonly words: Text;
  readonly under: Text;
}

const LABELS: Readonly<Record<ConsumableLine['what'], string>> = {
  connector: 'Connectors',
  band: 'Bands',
  glue: 'Glue',
};

/** "2 packs of 100: biscuit20", and what they are for; the amount alone where the shop does not say how it is sold. */
function usedUp({ buy, inAll, name, needed, over, size, spare, what }: ConsumableLine): Entry {
  const kind: Text = size.length > 0 ? [...size, '; '] : [];
  const left: Text = buy.length > 0 ? ['; ', ...over, ' left over'] : [];
  return {
    label: LABELS[what],
    words: buy.length > 0 ? [...buy, `: ${name}`] : [...inAll, ` of ${name}`],
    under: [...kind, ...needed, ' needed, ', ...spare, ' to spare: ', ...inAll, ' in all', ...left],
  };
}

/** What the set-ups of a job use, each with the set-ups that it is for. */
function tools(setUps: readonly SetUp[], shop: ReturnType<typeof shopOf>): readonly Entry[] {
  const entry = (label: string, wordsOf: (setUp: SetUp) => readonly Text[]): readonly Entry[] =>
    gathered(setUps, wordsOf).map(({ words, at }) => ({ label, words, under: [setUpsAt(at)] }));
  const all = spacersOf(setUps);
  const needed =
    all.length > 0 ? [{ label: 'Spacers', words: spacerCounts(all), under: ['in all, as many as stand at once'] }] : [];
  return [
    ...entry('Machines', ({ setting }) => [[`${setting.machine}, for ${setting.connector}`]]),
    ...entry('Patterns', ({ setting: { lines, pattern } }) =>
      pattern === undefined ? [] : [[`${pattern}: lines `, ...listed(lines)]],
    ),
    ...needed,
    ...entry('Spacers', (setUp) => (setUp.spacers ? [fenceWords(setUp)] : [])),
    ...entry('To be made', blockWords),
    ...entry('To be made', stopBlockWords),
    ...entry('Packers', (setUp) =>
      setUp.operations.flatMap((operation) => holdingOf(operation, setUp, shop).packers.map(packerWords)),
    ),
  ];
}

const packerWords = ({ thickness, where }: Packer): Text =>
  where === 'far end'
    ? say`a block ${thickness} thick, beside a piece that lies alone`
    : say`a block ${thickness} thick, on the thinner of two pieces`;

/** Blocks of a set-up that are made: one for each fence where pieces lie at both at once. */
function blockWords({ setting, beside }: SetUp): readonly Text[] {
  const { spacer } = setting;
  if (spacer.kind !== 'cut') return [];
  return beside.length > 0 ? [say`2 blocks of ${spacer.width}, one for each fence`] : [spacerWords(setting)];
}

/** Blocks between the stop and a piece. */
const stopBlockWords = ({ operations }: SetUp): readonly Text[] =>
  operations.flatMap(({ half: { stop } }): readonly Text[] => {
    if (!stop?.block) return [];
    const { width, like } = stop.block;
    return [
      [
        ...say`a block of ${width} at the stop`,
        ...(like ? [`: an offcut of ${like.material}, of the sheet of ${like.id}`] : []),
      ],
    ];
  });

/** What is the same in several set-ups, in the order it first comes. */
function gathered(setUps: readonly SetUp[], wordsOf: (setUp: SetUp) => readonly Text[]) {
  const found = new Map<string, { readonly words: Text; readonly at: number[] }>();
  for (const [i, setUp] of setUps.entries())
    for (const words of wordsOf(setUp)) {
      const one = found.get(words.join('|')) ?? { words, at: [] };
      if (one.at.at(-1) !== i + 1) one.at.push(i + 1);
      found.set(words.join('|'), one);
    }
  return [...found.values()];
}

/** "set-up 3", "set-ups 1 to 4, 7". */
function setUpsAt(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const n of numbers) {
    const last = runs.at(-1);
    if (last?.[1] === n - 1) last[1] = n;
    else runs.push([n, n]);
  }
  const words = runs.map(([from, to]) =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`,
  );
  return `${numbers.length === 1 ? 'set-up' : 'set-ups'} ${words.join(', ')}`;
}
