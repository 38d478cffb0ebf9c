import { SIDES } from '@dryfit/engine';
import { generator, pick } from '../../support/random.js';
import { tokensOf, withTokens } from '../../support/tokens.js';

const NAMES = [
  'west',
  'east',
  'plank',
  'board',
  'ledge',
  'tray',
  'slat',
  'panelA',
  'stileB',
  'crown',
  'plinth',
  'span',
];
const OFFS = [0.1, 0.25, 0.4, 1, 2, 2.5, 3, 5, 7, 10, 12.7, 20];

/**
 * The same text as another joiner might have it: other names for the parts, a number or two changed, lengths in
 * millimetres in a file of inches, other line ends, comments, several statements on a line. What it shows may change.
 */
export function vary(text: string, seed: number): string {
  const random = generator(seed);
  let varied = text;
  const times = pick(random, 3);
  for (let i = 0; i < times; i++) varied = withAnotherNumber(varied, random);
  if (random() < 0.5) varied = renamed(varied, random);
  if (random() < 0.25) varied = inMillimetresOfInches(varied);
  const layout = pick(random, 4);
  if (layout === 1) varied = varied.replace(/\{ ([^{}\n]*) \}/g, '{\n    $1\n  }');
  if (layout === 2)
    varied = varied.replace(/\{\s*([^{}]*?)\s*\}/g, (_, inner: string) => `{ ${inner.replace(/\s*\n\s*/g, '  ')} }`);
  if (random() < 0.25) varied = varied.replace(/^(\s+(?:width|depth|height) .*\w)$/gm, '$1 // as asked for');
  if (random() < 0.2) varied = varied.replaceAll('\n', '\r\n');
  return varied;
}

const isPlain = (text: string): boolean => /^\d+(\.\d+)?$/.test(text);

/** A number a little larger or smaller; small ones, such as how many, stay. */
function withAnotherNumber(text: string, random: () => number): string {
  const tokens = tokensOf(text);
  const large = tokens.flatMap((token, i) => (isPlain(token.text) && Number(token.text) >= 15 ? [i] : []));
  const at = large[pick(random, large.length)];
  const off = OFFS[pick(random, OFFS.length)] ?? 1;
  if (at === undefined) return text;
  const now = Number(tokens[at]?.text) + (random() < 0.5 ? off : -off);
  return withTokens(text, new Map([[at, String(Number(now.toFixed(3)))]]));
}

function renamed(text: string, random: () => number): string {
  const declared = [...text.matchAll(/\bparts?\s+([\w\s,]*?)(?:\s+\d+\s+to\s+\d+)?\s*:/g)].flatMap(([, names = '']) =>
    names.split(/[\s,]+/),
  );
  const own = declared.filter((name) => /^[a-z]\w*$/i.test(name) && !SIDES.some((side) => side === name));
  const start = pick(random, NAMES.length);
  const names = new Map(
    [...new Set(own)].map((name, i) => [name, `${NAMES[(start + i) % NAMES.length]}${i >= NAMES.length ? i : ''}`]),
  );
  const changes = tokensOf(text).flatMap((token, i): [number, string][] => {
    const now = names.get(token.text);
    return now === undefined ? [] : [[i, now]];
  });
  return withTokens(text, new Map(changes));
}

/** A file of inches in which every length keeps its millimetres; only where no number is a count. */
function inMillimetresOfInches(text: string): string {
  if (/\b(parts|job|count|stiffness|density)\b|[*/]\s*\d/.test(text) || /^units in/m.test(text)) return text;
  const changes = tokensOf(text).flatMap((token, i): [number, string][] =>
    isPlain(token.text) ? [[i, `${token.text} mm`]] : [],
  );
  return `units in\n${withTokens(text, new Map(changes)).replace(/^units mm\n/m, '')}`;
}
