export * from './assembly/index.js';
export { CHECK_FAILED } from './checks/check.js';
export { checkCodes, checkSeverities } from './checks/codes.js';
export * from './fit/index.js';
export { UNUSED_SILENCE } from './fit/silence.js';
export * from './load/index.js';
export * from './number/index.js';
export { fit, type NumberToChange, numbersThatMove, type SideOf, statementSources } from './pipeline.js';
export * from './spec/index.js';
