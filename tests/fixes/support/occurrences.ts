import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { at, examplesOf } from '../../checks/page.js';
import { plans } from '../../support/cabinets/arbitrary.js';
import { write } from '../../support/cabinets/plan.js';
import { examples, exampleText } from '../../support/examples.js';
import { inInches, inMillimetres, mixedUnits } from '../../support/spelling.js';
import { vary } from './vary.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const FOLDERS = ['packages/engine/src/checks/', 'packages/language/src/checks/'];

/** The failing examples of a check's page, and the example named after it. */
export function failing(code: string): readonly string[] {
  const pages = FOLDERS.flatMap((folder) =>
    readdirSync(root + folder)
      .filter((file) => file === `${code}.md`)
      .map((file) => root + folder + file),
  );
  const shown = pages
    .flatMap((page) => examplesOf(readFileSync(page, 'utf8')))
    .flatMap((example) =>
      example.kind === 'passes' ? [] : [example.limit ? at(example, example.limit.fails) : example.text],
    );
  const broken = examples('broken').filter(({ name }) => name === `${code}.joinery`);
  return [...shown, ...broken.map(({ text }) => text.replaceAll('import "../', 'import "'))];
}

const WHOLE = ['periodicals', 'bookcase', 'rail-base', 'returns-bin', 'display-plinth'].map((name) =>
  exampleText(`${name}.joinery`),
);

/** Random cabinets with their own stock, in millimetres, in inches and in both. */
const random = fc.sample(plans, { seed: 20, numRuns: 60 }).map((plan, i) =>
  write(plan, {
    spelling: [inMillimetres, inInches, mixedUnits(i)][i % 3] ?? inMillimetres,
    mirrored: i % 2 === 1,
    order: i,
  }),
);

/**
 * Texts in which a check is likely to find something, without end: the failing examples of its page as they stand,
 * these varied, and in between whole examples with a number changed and random cabinets.
 */
export function* textsFor(codes: readonly string[]): Generator<string> {
  const bases = codes.map(failing);
  yield* bases.flat();
  for (let seed = 1; ; seed++) {
    for (const own of bases) {
      const base = own[seed % Math.max(1, own.length)];
      if (base !== undefined) yield vary(base, seed);
    }
    if (seed % 4 === 0) {
      const whole = WHOLE[(seed / 4) % WHOLE.length];
      if (whole !== undefined) yield vary(vary(whole, seed), seed + 1);
    }
    if (seed % 5 === 0) {
      const made = random[(seed / 5) % random.length];
      if (made !== undefined) yield made;
    }
  }
}
