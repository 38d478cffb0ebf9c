import { mostOfEach, type SetUp, type SpacerCount, sameStack, say, type Text } from '@dryfit/engine';
import { exact, known } from '../fit-json/lengths.js';
import { spacerWords, stackWords } from './words.js';

/** "2 of 12, 2 of 10, 1 of 6". */
export const spacerCounts = (counts: readonly SpacerCount[]): Text =>
  counts.flatMap(({ width, count }, i): Text => [i === 0 ? '' : ', ', `${count} of `, width]);

/** All the spacers of the shop that a plan needs, so many as stand at once. */
export const spacersOf = (setUps: readonly SetUp[]): readonly SpacerCount[] =>
  mostOfEach(setUps.flatMap(({ spacers }) => (spacers ? [spacers.needed] : [])));

/** What stands at which fence in a set-up: "12 + 10 = 22, at each fence". */
export function fenceWords({ setting, spacers }: Pick<SetUp, 'setting' | 'spacers'>): Text {
  const words = spacerWords(setting);
  if (spacers?.fences === 'in turn') return [...words, ', going from fence to fence'];
  if (spacers?.fences !== 'both') return words;
  return sameStack(spacers.left, spacers.right)
    ? [...words, ', at each fence']
    : [...stackWords(spacers.left), ' at the left fence, ', ...stackWords(spacers.right), ' at the right one'];
}

/** What is to be known of the spacers of a set-up that both fences want, and what a second stack would spare. */
export function spacerNotes(setUp: SetUp): readonly Text[] {
  const { spacers, setting, beside } = setUp;
  if (setting.spacer.kind === 'cut' && beside.length > 0)
    return [say`A block of ${setting.spacer.width} at each fence: two are made.`];
  if (!spacers || spacers.fences === 'one') return [];
  if (spacers.fences === 'both')
    return [['Spacers: ', ...fenceWords(setUp), '; ', ...spacerCounts(spacers.needed), ' in all.']];
  const { lacks } = spacers;
  const once: Text = [...spacerWords(setting), ' goes from fence to fence: the shop has the pieces for one alone'];
  if (!lacks) return [[...once, '.']];
  const fewer = `${lacks.spares} ${lacks.spares === 1 ? 'time' : 'times'} fewer`;
  return [
    [
      ...once,
      '. With ',
      ...spacerCounts(lacks.pieces),
      ` more in the jig’s "spacers", pieces would be laid down ${fewer}, one at each fence.`,
    ],
  ];
}

/** The same as data. */
export function fenceJson({ spacers }: SetUp) {
  if (!spacers) return undefined;
  const { left, right, fences, lacks, needed } = spacers;
  return known<FenceJson>({
    left: left.map(exact),
    right: right.map(exact),
    fences,
    needed: countsJson(needed),
    lacks: lacks && { pieces: countsJson(lacks.pieces), spares: lacks.spares },
  });
}

type Exact = ReturnType<typeof exact>;
type CountJson = { readonly width: Exact; readonly count: number };
interface FenceJson {
  readonly left: Exact[];
  readonly right: Exact[];
  readonly fences: 'one' | 'both' | 'in turn';
  readonly needed: CountJson[];
  readonly lacks?: { readonly pieces: CountJson[]; readonly spares: number };
}

export const countsJson = (counts: readonly SpacerCount[]): CountJson[] =>
  counts.map(({ width, count }) => ({ width: exact(width), count }));
