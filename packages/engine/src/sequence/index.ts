export type { Precedence } from './problem.js';
export { type Sequence, type SequenceOptions, type Sequencer, sequenceSetups } from './sequence.js';
