import type { Finding } from '@dryfit/engine';
import { type LangiumDocument, OperationCancelled } from 'langium';
import { examine } from '../findings/examine.js';
import type { JoineryServices } from '../services.js';
import { isSound } from './apply.js';
import { type CureOptions, curesOf, isCured, othersBear } from './cures.js';
import type { Cure, FileEdit, Fix } from './fix.js';
import { fixes } from './index.js';
import type { Trial } from './trial.js';

/** Fixes whose preferred cure for a check may be made unseen. */
const safeFor = (code: string): readonly Fix[] => fixes.filter(({ safe }) => safe?.[code] !== undefined);

/**
 * The preferred cures of safe fixes for all findings, together. Each is tried on top of those before it, so that
 * none undoes another; what lies in the way of an earlier one is left for the next time.
 */
export async function safeChange(
  findings: readonly Finding[],
  document: LangiumDocument,
  services: JoineryServices,
  trial: Trial,
  options: CureOptions = {},
): Promise<Cure | undefined> {
  const made: FileEdit[] = [];
  const titles: string[] = [];
  let before = examine(document, services, options);
  for (const finding of findings) {
    if (options.isOver?.()) throw OperationCancelled;
    const cures = await curesOf(finding, document, services, trial, { ...options, among: safeFor(finding.code) });
    const cure = cures.find(({ preferred }) => preferred);
    if (!cure) continue;
    const added = cure.edits.filter((edit) => !made.some((one) => isSame(one, edit)));
    const edits = [...made, ...added];
    if (added.length === 0 || !isSound(edits)) continue;
    const after = await trial.examine(document, { edits }, options);
    if (!isCured(finding, before, after, cure.fix)) continue;
    if (!(await othersBear({ edits }, cure.fix, document, services, trial, options))) continue;
    made.push(...added);
    titles.push(cure.title);
    before = after;
  }
  if (made.length === 0) return undefined;
  const [only] = titles;
  return { title: titles.length === 1 && only ? only : `Make all ${titles.length} safe fixes`, edits: made };
}

const isSame = (a: FileEdit, b: FileEdit): boolean =>
  a.uri === b.uri && a.start === b.start && a.end === b.end && a.text === b.text;
