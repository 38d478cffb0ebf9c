import { render } from '@dryfit/engine';
import { curesOf, type Fix, fixes } from '@dryfit/language';
import { describe, expect, it } from 'vitest';
import type { Files } from '../../support/read.js';
import { Bench, TEXT } from './bench.js';
import { newFindings } from './compare.js';
import { textsFor } from './occurrences.js';
import { slipsFor } from './slips.js';

/** How many occurrences each fix is tried on. */
const WANTED = 200;
/** Sound texts with a slip that are looked at for every variant of a page. */
const SLIPS_A_PAGE = 3;
/** Texts that are looked through for them at most. */
const MOST = 4000;

export interface Proof {
  /** Occurrences that the fix had a cure for, all of which were applied. */
  readonly cured: number;
  /** Those of them that were made by a slip in a sound text. */
  readonly slipped: number;
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
  let [cured, slipped, seen, texts] = [0, 0, 0, 0];
  const met = new Set<string>();
  for (const { files, slip } of layouts(fix)) {
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
      if (cures.length > 0 && slip) slipped++;
      for (const cure of cures) {
        const after = (await fresh.layAnew(bench.changed(cure))).findings;
        const had = examination.findings.filter(({ code }) => code === finding.code).length;
        const has = after.filter(({ code }) => code === finding.code).length;
        const more = newFindings(examination.findings, after, cure, fix.mayFollow);
        if (has < had && more.length === 0) continue;
        const told = more.map(({ code, message }) => `${code}: ${render(message, { units: 'mm' })}`).join('\n');
        wrong.push(
          `${finding.code}: ${cure.title}; ${had} before, ${has} after, new: ${told}\n${text}\n${render(finding.message, { units: 'mm' })}`,
        );
      }
    }
  }
  return { cured, slipped, seen, wrong };
}

/** Texts in which a fix is likely to be wanted: its checks' pages as they stand and varied, and sound texts with a slip. */
function* layouts(fix: Fix): Generator<{ readonly files: Files; readonly slip: boolean }> {
  const slips = slipsFor(fix.name);
  for (const text of textsFor(fix.codes)) {
    yield { files: { [TEXT]: text }, slip: false };
    for (let i = 0; slips && i < SLIPS_A_PAGE; i++) yield { files: slips.next().value, slip: true };
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
      const { cured, slipped, wrong } = await prove(fixCalled(name));
      expect(wrong).toEqual([]);
      if (slipsFor(name)) expect(slipped).toBeGreaterThanOrEqual(cured / 2);
      expect(cured).toBeGreaterThanOrEqual(WANTED);
    });
  });
}
