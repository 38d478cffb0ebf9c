import { pick } from '../../../support/random.js';
import type { Files } from '../../../support/read.js';
import { tokensOf, withTokens } from '../../../support/tokens.js';
import { TEXT } from '../bench.js';
import { any, apart, changed } from './bases.js';

/** Makes a mistake in a sound text; undefined where it has no place for it. */
export type Slip = (text: string, random: () => number) => string | Files | undefined;

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

const USED = ['of', 'between', 'and', 'butt', 'groove', 'rest', 'house', 'by', 'connect', 'over', 'to', 'with', 'from'];

/** A name of a part, sheet, connector, band or pattern, where it is used. */
export const mistypedName: Slip = (text, random) => {
  const tokens = tokensOf(text);
  const own = tokens.flatMap((token, i) =>
    USED.includes(tokens[i - 1]?.text ?? '') && NAME.test(token.text) ? [i] : [],
  );
  const at = any(own, random);
  return at === undefined ? undefined : withTokens(text, new Map([[at, mistyped(tokens[at]?.text ?? '', random)]]));
};

const IMPORT = /^import "(shop\.joinery)"\r?\n/m;

/** The stock in a file of its own, or in the shop's, that nobody imports. */
export const importForgotten: Slip = (text) => {
  if (IMPORT.test(text)) return text.replace(IMPORT, '');
  const { cabinet, stock } = apart(text);
  return { [TEXT]: cabinet, 'stock.joinery': stock };
};

const WRONG = ['stock', 'stocks.joinery', 'shop/stock.joinery', 'stck.joinery', '../stock.joinery'];

/** An import of a file that is called otherwise, or lies elsewhere. */
export const importMistaken: Slip = (text, random) => {
  const wrong = any(WRONG, random) ?? '';
  if (IMPORT.test(text)) return text.replace(IMPORT, `import "${wrong.replaceAll('sto', 'sho').replace('ck', 'p')}"\n`);
  const { cabinet, stock } = apart(text);
  const [units = '', ...rest] = cabinet.split(/(?<=^units .*\n)/);
  return { [TEXT]: `${units}import "${wrong}"\n${rest.join('')}`, 'stock.joinery': stock };
};

/** Two files with the same stock, both imported. */
export const importedTwice: Slip = (text) => {
  if (/^import/m.test(text)) return undefined;
  const { cabinet, stock } = apart(text);
  const units = /^units .*\n/.exec(cabinet)?.[0] ?? '';
  const imports = 'import "stock.joinery"\nimport "rack.joinery"\n';
  return { [TEXT]: units + imports + cabinet.slice(units.length), 'stock.joinery': stock, 'rack.joinery': stock };
};

/** A part that is declared nowhere. */
export const partForgotten: Slip = (text, random) =>
  changed(text, /^ +part (\w+)((?:, \w+)*) +:.*\n/gm, random, ([line, first, others = '']) =>
    others === '' ? '' : line.replace(`${first}, `, ''),
  );

/** One of several parts meant without its number, or with one that there is not. */
export const numberMistaken: Slip = (text, random) => {
  const [, kind, last] = /^ +parts (\w+) 1 to (\d+)/m.exec(text) ?? [];
  if (kind === undefined) return undefined;
  const tokens = tokensOf(text);
  const named = any(
    tokens.flatMap(({ text: word }, i) => {
      const [before, after] = [tokens[i - 1]?.text ?? '', tokens[i + 1]?.text ?? ''];
      return ['above', 'below', 'from', 'with', 'against'].includes(before) && after === '.' && NAME.test(`${word}____`)
        ? [i]
        : [];
    }),
    random,
  );
  const wrong = random() < 0.5 ? kind : `${kind} ${Number(last) + 1 + pick(random, 3)}`;
  return named === undefined ? undefined : withTokens(text, new Map([[named, wrong]]));
};

/** The same thing declared again: a part, a sheet, a connector. */
export const declaredTwice: Slip = (text, random) => {
  const part = () =>
    changed(text, /^ +part (\w+).* : (.*)\n/gm, random, ([line, name, of]) => `${line}  part ${name} : ${of}\n`);
  const entry = () =>
    changed(
      text,
      /^(?:material|connector|pattern|band) \w+[^\n{]*\{[^}]*\}\n/gm,
      random,
      ([whole]) => `${whole}${whole}`,
    );
  return random() < 0.5 ? part() : (entry() ?? part());
};

/** A part called like a side. */
export const calledLikeASide: Slip = (text, random) => {
  const sides = ['left', 'right', 'front', 'rear', 'bottom', 'top'];
  const declared = [...text.matchAll(/^ +parts? (\w+(?:, \w+)*)/gm)].flatMap(([, names = '']) => names.split(', '));
  const [part, side] = [
    any(
      declared.filter((name) => !sides.includes(name)),
      random,
    ),
    any(sides, random) ?? '',
  ];
  return part === undefined || declared.includes(side)
    ? undefined
    : text.replaceAll(new RegExp(`(?<![\\w"])${part}(?![\\w"])`, 'g'), side);
};

/** A value that nothing rests on. */
export const usedByNobody: Slip = (text, random) =>
  changed(text, /^cabinet \w+ \{\r?\n/gm, random, ([head]) => `${head}  parameter spare = 12\n`);

/** Something that nobody uses, or an allowance of what is not found. */
export const nothingComesOfIt: Slip = (text, random) => {
  const line = any(
    ['parameter spare = 12', 'allow thin-wall "the wall is enough"', 'allow handed "they are marked"'],
    random,
  );
  return random() < 0.3
    ? `${text}\npattern idle { lines 70, 140 }\n`
    : changed(text, /^cabinet \w+ \{\r?\n/gm, random, ([head]) => `${head}  ${line}\n`);
};
