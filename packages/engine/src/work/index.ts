export type { Beside } from './beside.js';
export { USUAL_CHANGES } from './changes.js';
export type { Operation, Pieces, WorkItem } from './operation.js';
export { type Plan, planWork, type SetUp } from './plan.js';
export type { ChangeOver, Setting } from './setting.js';
