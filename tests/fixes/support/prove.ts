import { render } from '@dryfit/engine';
import { curesOf, type Fix, fixes } from '@dryfit/language';
import { describe, expect, it } from 'vitest';
import type { Files } from '../../support/read.js';
import { Bench, TEXT, tally, unlisted } from './bench.js';
import { textsFor } from './occurrences.js';
import { slips } from './slips.js';

/** How many occurrences each fix is tried on. */
const WANTED = 200;
/** Texts that are looked through for them at most. */
const MOST = 4000;

export interface Proof {
  /** Occurrences that the fix had a cure for, all of which were applied. */
  readonly cured: number;
  /** Findings of its checks that were looked at. */
  readonly seen: number;
  /** What went wrong, with the text and the edit. */
  readonly wrong: readonly string[];
}

/** Applies every cure of a fix to as many occurrences as are wanted, and looks at what is then found. */
export async function prove(fix: Fix, wanted = WANTED): Promise<Proof> {
  const bench = new Bench();
  // What the applied cure comes to is looked at where nothing of the trial is known.
  const fresh = new Bench();
  const wrong: string[] = [];
  let [cured, seen, texts] = [0, 0, 0];
  const met = new Set<string>();
  for (const files of layouts(fix)) {
    const text = files[TEXT] ?? '';
    if (cured >= wanted || texts++ >= MOST) break;
    if (met.has(text)) continue;
    met.add(text);
    const { document, examination } = await bench.lay(files);
    const suited = examination.findings.filter(({ code }) => fix.codes.includes(code)).slice(0, 3);
    for (const finding of suited) {
      seen++;
      const cures = await curesOf(finding, document, bench.services.joinery, bench.trial, {
        among: [fix],
        newFiles: true,
      });
      if (cures.length > 0) cured++;
      for (const cure of cures) {
        const { title } = cure;
        const after = (await fresh.lay(bench.changed(cure))).examination.findings;
        const had = tally(examination.findings).get(finding.code) ?? 0;
        const has = tally(after).get(finding.code) ?? 0;
        const more = unlisted(examination.findings, after, fix);
        if (has >= had || more.length > 0)
          wrong.push(
            `${finding.code}: ${title}; ${had} before, ${has} after, new: ${more}\n${text}\n${render(finding.message, { units: 'mm' })}`,
          );
      }
    }
  }
  return { cured, seen, wrong };
}

/** Texts in which a fix is likely to be wanted: variants of its checks' pages, and slips made in whole examples. */
function* layouts(fix: Fix): Generator<Files> {
  const slipped = slips[fix.name]?.()[Symbol.iterator]();
  for (const text of textsFor(fix.codes)) {
    yield { [TEXT]: text };
    const next = slipped?.next();
    if (next && !next.done) yield next.value;
  }
}

/** A fix by its name. */
export function fixCalled(name: string): Fix {
  const fix = fixes.find((one) => one.name === name);
  if (!fix) throw new Error(`there is no fix called ${name}`);
  return fix;
}

/** Tests that each of some fixes cures what it is offered for, and brings about nothing it does not say. */
export function proves(...names: readonly string[]): void {
  describe.each(names)('%s', (name) => {
    it(`cures ${WANTED} occurrences and brings nothing about that it does not list`, async () => {
      const { cured, wrong } = await prove(fixCalled(name));
      expect(wrong).toEqual([]);
      expect(cured).toBeGreaterThanOrEqual(WANTED);
    });
  });
}
