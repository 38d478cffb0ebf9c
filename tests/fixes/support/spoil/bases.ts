import fc from 'fast-check';
import { plans } from '../../../support/cabinets/arbitrary.js';
import { write } from '../../../support/cabinets/plan.js';
import { exampleText } from '../../../support/examples.js';
import { generator, pick } from '../../../support/random.js';
import { inInches, inMillimetres, mixedUnits } from '../../../support/spelling.js';
import { vary } from '../vary.js';

const WHOLE = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'].map((name) =>
  exampleText(`${name}.joinery`),
);

/** A cabinet that nobody has thought of, with its own stock, in millimetres, in inches or in both. */
export function randomText(seed: number): string {
  const [plan] = fc.sample(plans, { seed, numRuns: 1 });
  if (!plan) throw new Error('nothing was made');
  return write(plan, {
    spelling: [inMillimetres, inInches, mixedUnits(seed)][seed % 3] ?? inMillimetres,
    mirrored: seed % 2 === 1,
    order: seed,
  });
}

/** Sound texts without end: two random cabinets, then an example with other names, numbers and layout. */
export const baseText = (seed: number): string =>
  seed % 3 === 0 ? vary(WHOLE[(seed / 3) % WHOLE.length] ?? '', seed) : randomText(seed);

/** A file cut into the entries that are the cabinet's and those that others could share. */
export function apart(text: string): { readonly cabinet: string; readonly stock: string } {
  const units = /^units .*\n/.exec(text)?.[0] ?? '';
  const entries = text.slice(units.length).split(/\n(?=[a-z])/);
  const isCabinet = (entry: string) => /^\s*(?:cabinet|job|import)\b/.test(entry);
  const put = (own: readonly string[]) => `${units}${own.map((entry) => `${entry.trim()}\n`).join('\n')}`;
  return { cabinet: put(entries.filter(isCabinet)), stock: put(entries.filter((entry) => !isCabinet(entry))) };
}

/** Any of a list. */
export const any = <T>(list: readonly T[], random: () => number): T | undefined => list[pick(random, list.length)];

/** One of the places where a pattern is found, with what `now` makes of it; undefined if there is none. */
export function changed(
  text: string,
  pattern: RegExp,
  random: () => number,
  now: (match: RegExpMatchArray) => string,
): string | undefined {
  const match = any([...text.matchAll(pattern)], random);
  return match?.index === undefined
    ? undefined
    : text.slice(0, match.index) + now(match) + text.slice(match.index + match[0].length);
}

export { generator };
