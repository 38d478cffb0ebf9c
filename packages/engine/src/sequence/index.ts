export type { Precedence } from './problem.js';
export { type Sequence, type SequenceOptions, sequenceSetups } from './sequence.js';
