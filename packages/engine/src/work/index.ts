export type { Beside } from './beside.js';
export { USUAL_CHANGES } from './changes.js';
export type { Operation, Pieces, WorkItem } from './operation.js';
export { type OwnPattern, type PatternChoice, type PatternedJoint, patternsFor } from './patterns.js';
export { type Plan, planWork, type SetUp } from './plan.js';
export type { ChangeOver, Setting } from './setting.js';
