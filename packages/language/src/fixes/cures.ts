import type { Finding } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import { type Examination, type ExamineOptions, examine } from '../findings/examine.js';
import type { JoineryServices } from '../services.js';
import { isSound } from './apply.js';
import { caseOf } from './case.js';
import type { Cure, FileEdit, Fix } from './fix.js';
import { fixes } from './index.js';
import type { Trial } from './trial.js';

/** A cure that was found to cure, and the fix that thought of it. */
export interface Proved extends Cure {
  readonly fix: Fix;
}

/** Most cures of one fix that are tried for one finding. */
const MOST_TRIES = 20;

export interface CureOptions extends ExamineOptions {
  /** The fixes to ask; all if absent. */
  readonly among?: readonly Fix[] | undefined;
  /** True once nobody waits for the answer any more. */
  readonly isOver?: (() => boolean) | undefined;
}

/** Every cure of a finding that does cure it and brings nothing new about. */
export async function curesOf(
  finding: Finding,
  document: LangiumDocument,
  services: JoineryServices,
  trial: Trial,
  options: CureOptions = {},
): Promise<readonly Proved[]> {
  const suited = (options.among ?? fixes).filter(({ codes }) => codes.includes(finding.code));
  const about = suited.length === 0 ? undefined : caseOf(finding, document, services, options);
  if (!about) return [];
  const before = examine(document, services, options);
  const proved: Proved[] = [];
  for (const fix of suited) {
    const most = fix.most ?? Number.POSITIVE_INFINITY;
    let [tries, found] = [0, 0];
    for (const cure of fix.offer(about)) {
      if (options.isOver?.()) return [];
      if (tries >= MOST_TRIES || found >= most) break;
      if (cure.edits.length === 0 || !isSound(cure.edits) || proved.some((other) => isSame(other.edits, cure.edits)))
        continue;
      tries++;
      const after = await trial.examine(document, cure.edits, options);
      if (!isCured(finding, before, after, fix)) continue;
      found++;
      const preferred = cure.preferred === true && !proved.some((other) => other.preferred);
      proved.push({ title: cure.title, edits: cure.edits, preferred, fix });
    }
  }
  return proved;
}

const isSame = (a: readonly FileEdit[], b: readonly FileEdit[]): boolean => JSON.stringify(a) === JSON.stringify(b);

/** One finding less of the check, and no more of any other than the fix says. */
export function isCured(finding: Finding, before: Examination, after: Examination, fix: Fix): boolean {
  const [had, has] = [countsOf(before.findings), countsOf(after.findings)];
  if ((has.get(finding.code) ?? 0) >= (had.get(finding.code) ?? 0)) return false;
  return newIn(had, has).every((code) => fix.mayFollow?.[code] !== undefined);
}

const newIn = (had: ReadonlyMap<string, number>, has: ReadonlyMap<string, number>): readonly string[] =>
  [...has].filter(([code, count]) => count > (had.get(code) ?? 0)).map(([code]) => code);

function countsOf(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}
