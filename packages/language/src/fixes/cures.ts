import type { Finding } from '@dryfit/engine';
import { delayNextTick, type LangiumDocument, OperationCancelled, URI } from 'langium';
import { type Examination, type ExamineOptions, examine } from '../findings/examine.js';
import type { JoineryServices } from '../services.js';
import { isSound } from './apply.js';
import { caseOf } from './case.js';
import type { Change, Cure, Fix } from './fix.js';
import { fixes } from './index.js';
import { dependantsOf } from './support/dependants.js';
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
  /** Whether cures may make files; not if absent. */
  readonly newFiles?: boolean | undefined;
  /** Documents that somebody looks at; those of them that draw on what a cure changes have to put up with it. */
  readonly open?: readonly LangiumDocument[] | undefined;
  /** True once nobody waits for the answer any more. */
  readonly isOver?: (() => boolean) | undefined;
}

/**
 * Every cure of a finding that does cure it and brings nothing new about, here or in another open file. Fails with
 * Langium's sign for what was called off once it is over.
 */
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
      // Whoever calls it off is heard between two tries.
      await delayNextTick();
      if (options.isOver?.()) throw OperationCancelled;
      if (tries >= MOST_TRIES || found >= most) break;
      if (!isSound(cure.edits) || isNothing(cure) || proved.some((other) => isSame(other, cure))) continue;
      if (!(await canBeMade(cure, services, options))) continue;
      tries++;
      if (!isCured(finding, before, await trial.examine(document, cure, options), fix)) continue;
      if (!(await othersBear(cure, fix, document, services, trial, options))) continue;
      found++;
      const preferred = cure.preferred === true && !proved.some((other) => other.preferred);
      proved.push({ ...cure, preferred, fix });
    }
  }
  return proved;
}

const isNothing = ({ edits, newFiles = [] }: Change): boolean => edits.length + newFiles.length === 0;
const isSame = (a: Change, b: Change): boolean =>
  JSON.stringify([a.edits, a.newFiles]) === JSON.stringify([b.edits, b.newFiles]);

/** No file is made where one is, though it may be one that cannot be read. */
async function canBeMade({ newFiles = [] }: Change, services: JoineryServices, options: CureOptions): Promise<boolean> {
  if (newFiles.length > 0 && !options.newFiles) return false;
  for (const { uri } of newFiles)
    if (await services.shared.workspace.FileSystemProvider.exists(URI.parse(uri))) return false;
  return true;
}

/** Nothing new is found in the other open documents that draw on what is changed. */
export async function othersBear(
  change: Change,
  fix: Fix,
  document: LangiumDocument,
  services: JoineryServices,
  trial: Trial,
  options: CureOptions,
): Promise<boolean> {
  for (const other of dependantsOf(change, options.open ?? [], services)) {
    if (other.uri.toString() === document.uri.toString()) continue;
    const before = examine(other, services, options);
    if (newIn(before, await trial.examine(other, change, options), fix).length > 0) return false;
  }
  return true;
}

/** One finding less of the check, and no more of any other than the fix says. */
export function isCured(finding: Finding, before: Examination, after: Examination, fix: Fix): boolean {
  const [had, has] = [countsOf(before.findings), countsOf(after.findings)];
  return (has.get(finding.code) ?? 0) < (had.get(finding.code) ?? 0) && newIn(before, after, fix).length === 0;
}

/** Checks that find more than before, other than those that the fix says may follow. */
function newIn(before: Examination, after: Examination, fix: Fix): readonly string[] {
  const [had, has] = [countsOf(before.findings), countsOf(after.findings)];
  return [...has]
    .filter(([code, count]) => count > (had.get(code) ?? 0) && fix.mayFollow?.[code] === undefined)
    .map(([code]) => code);
}

function countsOf(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}
