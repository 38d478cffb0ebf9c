import {
  type FitResult,
  type GlueStep,
  type GlueUp,
  glueUp,
  isGlued,
  mostJoints,
  type StuckParts,
} from '@dryfit/engine';
import { plural } from '../findings/text.js';
import { clampWords, jointsOf, named, stepWords, wayWords } from './words.js';

/** How a cabinet is glued up, in words. */
export interface GlueUpSheet {
  readonly order: GlueUp;
  readonly steps: readonly SheetStep[];
  /** What else there is to know: loose parts, parts that no order puts together, what was assumed. */
  readonly notes: readonly string[];
}

export interface SheetStep {
  readonly step: GlueStep;
  readonly words: string;
  /** What goes with it: "joints", and which. */
  readonly facts: readonly (readonly [name: string, value: string])[];
}

/** The glue-up of a cabinet as its shop can do it. */
export function glueUpSheet(result: FitResult): GlueUpSheet {
  const { limits } = result.spec.shop;
  const order = glueUp(result.fit, mostJoints(limits));
  const steps = order.steps.map((step) => ({ step, words: stepWords(result, step), facts: factsOf(result, step) }));
  return { order, steps, notes: notesOf(result, order) };
}

function factsOf(result: FitResult, step: GlueStep): SheetStep['facts'] {
  const facts: (readonly [string, string])[] = [];
  if (step.allMove) {
    const ways = step.coming.map(
      ({ parts, legs }) => `${named(result, parts)} ${wayWords(legs.at(-1)?.way ?? [0, 0, 0])}`,
    );
    facts.push(['moves', ways.join(', ')]);
  }
  const joints = jointsOf(result, step);
  if (joints.length > 0) facts.push(['joints', joints.map(({ id }) => id).join(', ')]);
  for (const list of step.together) facts.push(['drawn together', `${list.join(', ')}: all at the same time`]);
  if (step.connectors.length > 0)
    facts.push(['connectors', step.connectors.map(({ connector, count }) => `${count} ${connector}`).join(', ')]);
  const bare = joints.filter(({ without }) => without !== undefined);
  if (bare.length > 0) facts.push(['no connectors', bare.map(({ id, without }) => `${id} ${without}`).join(', ')]);
  if (step.clamps.length > 0) facts.push(['clamps', clampsOf(step)]);
  const time = timeOf(result, joints.filter(isGlued).length);
  if (time !== undefined) facts.push(['glue', time]);
  return facts;
}

/** How many clamps lie which way, each way once. */
function clampsOf({ clamps }: GlueStep): string {
  const counts = new Map<string, number>();
  for (const one of clamps) counts.set(clampWords(one), (counts.get(clampWords(one)) ?? 0) + one.count);
  return [...counts].map(([words, count]) => `${count} ${words}`).join('; ');
}

function timeOf({ spec }: FitResult, joints: number): string | undefined {
  const { glueOpen, jointTime } = spec.shop.limits;
  if (!glueOpen || !jointTime || joints === 0) return undefined;
  const minutes = (n: number): string => String(Number(n.toFixed(2)));
  return `${minutes(jointTime.toNumber() * joints)} of the ${minutes(glueOpen.toNumber())} min it stays open`;
}

function notesOf(result: FitResult, { loose, stuck, unplaced }: GlueUp): readonly string[] {
  const notes = stuck.map((group) => stuckNote(result, group));
  if (unplaced.length > 0) notes.push(`Left out, because its place is not fixed: ${named(result, unplaced)}.`);
  if (loose.length > 0) notes.push(`Goes in loose when all is done: ${named(result, loose)}.`);
  notes.push(
    'Each step is clamped and left to set before the next. Clamps are counted as one for each 300 mm of a glued joint begun.',
  );
  return notes;
}

const stuckNote = (result: FitResult, { parts, joints, proven }: StuckParts): string =>
  `${named(result, parts)} ${proven ? 'cannot be put together in any order' : 'can be put together in no order that was found'} (${plural(joints.length, 'joint')} between them); they are taken as one piece here.`;
