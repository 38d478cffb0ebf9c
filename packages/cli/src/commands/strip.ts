import { resolve } from 'node:path';
import { type LengthFormat, type Pattern, Rational, type Shop, type Strip, stripOf } from '@dryfit/engine';
import { mistaken, type Paper, plural, printLength, stripPages, stripTitle } from '@dryfit/output';
import { lengthOption } from '../input/length.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { folderName, folderNames } from '../output/names.js';
import { printed } from '../output/printed.js';
import { isStrip, STRIPS } from '../output/whose.js';
import { type Written, writeWhole } from '../output/write.js';
import { paintFor } from '../paint.js';
import { type Sound, sound } from '../sound.js';

export interface StripOptions extends FindingOptions {
  readonly out: string;
  readonly paper?: Paper | undefined;
  /** As written: "564", "22 1/4in". */
  readonly length?: string | undefined;
  readonly withErrors?: boolean | undefined;
}

/** A longer bed is a slip of the pen, mm. */
const LONGEST = Rational.of(10_000);
/** Lines that a strip has room for: more are a slip of the pen as well. */
const MOST_LINES = 500;

/** Writes line strips, the patterns of a workshop in their true size for the beds they are laid along, as HTML and as PDF. */
export async function strip(file: string, name: string | undefined, options: StripOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'written');
  if (found === undefined) return ERRORS;
  const { format, counts } = found;
  const { strips, skipped, keep } = stripsOf(found, file, name, options);
  const names = folderNames(strips.map((one) => nameOf(one, format)));
  const files: Written[] = [];
  let pages = 0;
  for (const [i, one] of strips.entries()) {
    const sheets = stripPages(one, options.paper ?? 'A4', format, counts.errors);
    files.push(...(await printed(`${STRIPS}/${names[i]}`, stripTitle(one, format), sheets)));
    pages += sheets.length;
  }
  await io.uninterrupted(() =>
    writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, (path) => isStrip(path) && !keep(path)),
  );
  const paint = paintFor(io.err, io.env);
  for (const one of strips)
    for (const line of warningsOf(one, format)) io.err.write(`${paint.warning('warning')}: ${line}\n`);
  for (const line of skipped) io.err.write(`${line}\n`);
  io.out.write(`wrote ${plural(pages, 'page')} to ${options.out}: ${files.map(({ path }) => path).join(', ')}\n`);
  return counts.errors > 0 ? ERRORS : CLEAN;
}

interface Strips {
  readonly strips: readonly Strip[];
  /** What is not printed, and why, in words. */
  readonly skipped: readonly string[];
  /** Files of earlier calls that this one does not replace. */
  readonly keep: (path: string) => boolean;
}

/**
 * The strip of the pattern that is meant, or those of all patterns.
 * @throws Misuse if there is none, or if its lines depend on a length that is not given
 */
function stripsOf(found: Sound, file: string, name: string | undefined, options: StripOptions): Strips {
  const { examination, format } = found;
  const shop = examination.shop();
  const patterns = [...(shop?.patterns.values() ?? [])];
  if (!shop || patterns.length === 0) throw new Misuse(`there is no pattern in ${file}, nor in what it imports`);
  const part = lengthOption('--length', options.length, examination.units, 'above zero');
  if (name !== undefined) {
    const pattern = shop.patterns.get(name);
    if (!pattern)
      throw new Misuse(
        `there is no pattern ${name} in ${file}; there is ${[...shop.patterns.keys()].sort().join(', ')}`,
      );
    if (part && pattern.layout.kind === 'lines')
      throw new Misuse(`the lines of pattern ${name} are fixed; --length is for patterns that are spread over a part`);
    const strip = checked(pattern, shop, part, format);
    if (!strip) throw new Misuse(`${spreadWords(name, found)}; give a length with --length`);
    return { strips: [strip], skipped: [], keep: () => true };
  }
  const strips = patterns.flatMap((pattern) => checked(pattern, shop, part, format) ?? []);
  const spread = patterns.filter(({ layout }) => layout.kind === 'spread').map((pattern) => pattern.name);
  const skipped = part ? [] : spread.map((one) => `${spreadWords(one, found)}; it is printed with --length`);
  if (strips.length === 0) throw new Misuse(skipped[0] ?? `there is no pattern in ${file}`);
  const keep = (path: string) => spread.some((one) => path.startsWith(`${STRIPS}/${folderName(one)}-`));
  return { strips, skipped, keep };
}

function checked(pattern: Pattern, shop: Shop, part: Rational | undefined, format: LengthFormat): Strip | undefined {
  const strip = stripOf(pattern, shop, part);
  const bed = shop.jig?.bed;
  if (strip?.part && bed && part?.gt(bed))
    throw new Misuse(
      `a part ${printLength(part, format)} long does not lie on the bed of ${shop.jig?.name}, which is ${printLength(bed, format)}`,
    );
  if (strip?.length.gt(LONGEST))
    throw new Misuse(
      `a strip of pattern ${pattern.name} would be ${printLength(strip.length, format)} long; none longer than ${printLength(LONGEST, format)} is printed`,
    );
  if (strip && strip.lines.length > MOST_LINES)
    throw new Misuse(`pattern ${pattern.name} has ${strip.lines.length} lines; no more than ${MOST_LINES} are printed`);
  return strip;
}

/** That a pattern has no lines of its own, and on which lengths the cabinets of the file use it. */
function spreadWords(name: string, { examination, format }: Sound): string {
  const results = [
    ...examination.cabinets,
    ...examination.jobs.flatMap(({ items }) => items.map(({ result }) => result)),
  ];
  const lengths = new Map<string, Rational>();
  for (const { fit } of results)
    for (const { pattern, contact } of fit.joints) {
      const length = pattern === name ? contact?.hi.sub(contact.lo) : undefined;
      if (length) lengths.set(String(length), length);
    }
  const used = [...lengths.values()].sort((a, b) => a.compare(b)).map((length) => printLength(length, format));
  const where =
    used.length > 0
      ? `, in this file ${used.slice(0, MOST_TOLD).join(', ')}${used.length > MOST_TOLD ? ' and more' : ''}`
      : '';
  return `pattern ${name} has no fixed lines: they depend on the length of the part${where}`;
}

const MOST_TOLD = 6;

const nameOf = ({ pattern, part }: Strip, format: LengthFormat): string =>
  part ? `${pattern}-${printLength(part, format)}` : pattern;

function warningsOf({ pattern, near, lines, bed }: Strip, format: LengthFormat): readonly string[] {
  const said = (length: Rational) => printLength(length, format);
  return [
    ...mistaken(near).map(
      ({ lines: [one, other], apart }) =>
        `pattern ${pattern}: on a bed of ${said(bed ?? one.add(other))} the lines ${said(one)} and ${said(other)}, each from another fence, lie only ${said(apart)} apart, so that one is taken for the other; move one of them, or make the bed longer or shorter`,
    ),
    ...lines
      .filter(({ not }) => not !== undefined)
      .map(
        ({ hand, fromFence, not }) =>
          `pattern ${pattern}: the line ${said(fromFence)} from the ${hand} fence is ${not}`,
      ),
  ];
}
