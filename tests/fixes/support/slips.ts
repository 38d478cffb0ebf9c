import { exampleText } from '../../support/examples.js';
import { generator, pick } from '../../support/random.js';
import type { Files } from '../../support/read.js';
import { tokensOf, withTokens } from '../../support/tokens.js';
import { TEXT } from './bench.js';
import { vary } from './vary.js';

const WHOLE = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'].map((name) =>
  exampleText(`${name}.joinery`),
);
const SHOP = exampleText('shop.joinery');

/** Whole examples, each varied in its own way, with a slip of the hand in each; without end. */
function* everywhere(slip: (text: string, random: () => number) => string | Files | undefined): Generator<Files> {
  for (let seed = 1; ; seed++) {
    const base = WHOLE[seed % WHOLE.length] ?? '';
    const slipped = slip(vary(base, seed), generator(seed));
    if (slipped !== undefined) yield typeof slipped === 'string' ? { [TEXT]: slipped } : slipped;
  }
}

const NAME = /^[a-z]\w{3,}$/i;

/** One letter of a word left out, doubled, or changed places with the next. */
function mistyped(word: string, random: () => number): string {
  const at = 1 + pick(random, word.length - 2);
  const [before, letter, next, after] = [word.slice(0, at), word[at], word[at + 1] ?? '', word.slice(at + 2)];
  return [
    `${before}${next}${after}`,
    `${before}${letter}${letter}${next}${after}`,
    `${before}${next}${letter}${after}`,
  ][pick(random, 3)] as string;
}

/** Words of a text that are names of parts, sheets, connectors or patterns, where they are used. */
function mistypedName(text: string, random: () => number): string | undefined {
  const tokens = tokensOf(text);
  const times = new Map<string, number>();
  for (const { text: word } of tokens) times.set(word, (times.get(word) ?? 0) + 1);
  const own = tokens.flatMap((token, i) => {
    const before = tokens[i - 1]?.text ?? '';
    const used = ['of', 'between', 'and', 'butt', 'by', 'connect', 'over'].includes(before) && NAME.test(token.text);
    return used ? [i] : [];
  });
  const at = own[pick(random, own.length)];
  return at === undefined ? undefined : withTokens(text, new Map([[at, mistyped(tokens[at]?.text ?? '', random)]]));
}

const IMPORT = /^import "(shop\.joinery)"\r?\n/m;

/** An import of a file that is called otherwise, or lies elsewhere. */
function wrongImport(text: string, random: () => number): string | undefined {
  const wrong = ['shop', 'shops.joinery', 'stock/shop.joinery', 'shp.joinery', '../shop.joinery'];
  const now = text.replace(IMPORT, `import "${wrong[pick(random, wrong.length)]}"\n`);
  return now === text ? undefined : now;
}

/** By the fix that they are for. */
export const slips: Readonly<Record<string, () => Iterable<Files>>> = {
  'did-you-mean': () => everywhere(mistypedName),
  'import-it': () =>
    everywhere((text) => {
      const without = text.replace(IMPORT, '');
      return without === text ? undefined : without;
    }),
  'import-path': () => everywhere(wrongImport),
  'create-import': () => everywhere(wrongImport),
  figure: () =>
    everywhere((text, random) => {
      const shop = SHOP.split('\n').slice(2);
      const figures = shop.flatMap((line, i) =>
        [...line.matchAll(/(?:thickness|measured|cutter|kerf|along|across|plunge|body|bed|within) (?=\d)/g)].map(
          ({ index, 0: { length } }) => [i, index + length] as const,
        ),
      );
      const [line, at] = figures[pick(random, figures.length)] ?? [0, 0];
      const own = shop.map((words, i) => (i === line ? `${words.slice(0, at)}-${words.slice(at)}` : words));
      return text.includes('units in') ? undefined : text.replace(IMPORT, `${own.join('\n')}\n`);
    }),
};
