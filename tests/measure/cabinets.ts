import { examples } from '../support/examples.js';

/** A file of cabinets: its name and its text. */
export interface Sheet {
  readonly name: string;
  readonly text: string;
}

const PER_FILE = 10;

/** Examples with one cabinet, without their job: what a file of many cabinets is made of. */
const models = examples()
  .filter(({ text }) => /^cabinet /m.test(text))
  .map(({ text }) => text.replace(/^job [\s\S]*?^}\n/m, ''));

/**
 * So many cabinets in files of ten. Each file holds ten of one example, each of its own name and width, and imports
 * the shop that the example imports.
 */
export function cabinets(count: number): Sheet[] {
  return Array.from({ length: count / PER_FILE }, (_, file) => {
    const model = models[file % models.length] as string;
    const at = model.indexOf('cabinet ');
    const [head, cabinet] = [model.slice(0, at), model.slice(at)];
    const copies = Array.from({ length: PER_FILE }, (_, i) => copyOf(cabinet, file * PER_FILE + i));
    return { name: `file${file}.joinery`, text: head + copies.join('\n') };
  });
}

function copyOf(cabinet: string, number: number): string {
  return cabinet
    .replace(/^cabinet (\w+)/, `cabinet $1${number}`)
    .replace(
      /(parameter wide = |width +)(\d+)/,
      (_, words: string, width: string) => `${words}${Number(width) + (number % 7)}`,
    );
}
