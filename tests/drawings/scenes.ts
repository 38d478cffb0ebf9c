import type { FitResult } from '@dryfit/engine';
import { type Scene, sceneOf } from '@dryfit/output';
import fc from 'fast-check';
import { plans } from '../support/cabinets/arbitrary.js';
import { type Plan, write } from '../support/cabinets/plan.js';
import { examples } from '../support/examples.js';
import { examineExample, examineText, fitText } from '../support/read.js';

/** A cabinet with what there is to draw of it. */
export interface Drawn {
  readonly name: string;
  readonly result: FitResult;
  readonly scene: Scene;
}

export const drawn = (name: string, result: FitResult, units: 'mm' | 'in'): Drawn => {
  const scene = sceneOf(result, result.findings, { units });
  return { name: `${name}: ${scene.title}`, result, scene };
};

/** Every cabinet of every example, as declared and as jobs make it. */
export async function sound(): Promise<readonly Drawn[]> {
  const all: Drawn[] = [];
  for (const { name } of examples()) {
    const { cabinets, jobs, units } = await examineExample(name);
    const made = jobs.flatMap((job) => job.lines.map(({ result }) => result));
    all.push(...[...cabinets, ...made].map((result) => drawn(name, result, units)));
  }
  return all;
}

/** Every cabinet of the examples that have something wrong with them. */
export async function broken(): Promise<readonly Drawn[]> {
  const all: Drawn[] = [];
  for (const { name, text } of examples('broken')) {
    // They lie a folder deeper than the shops they import, and are read beside them.
    const { results } = await examineText(text.replaceAll('import "../', 'import "'));
    all.push(...results.map((result) => drawn(name, result, 'mm')));
  }
  return all;
}

/** Cabinets nobody wrote. */
export const random = plans;

export const drawnFrom = async (plan: Plan): Promise<Drawn> => drawn('random', await fitText(write(plan)), 'mm');

export const views = fc.record({
  turn: fc.integer({ min: -360, max: 360 }),
  tilt: fc.integer({ min: -90, max: 90 }),
  apart: fc.constantFrom(0, 0.001, 0.05, 0.3, 0.6, 1),
});
