import type { Half } from '../fit/fit.js';
import type { Operation } from './operation.js';

/** The half that an operation mills as its joint asks for it, however it is milled in a plan. */
export const askedHalf = ({ joint, half }: Pick<Operation, 'joint' | 'half'>): Half =>
  joint.halves.find(({ part }) => part === half.part) ?? half;
