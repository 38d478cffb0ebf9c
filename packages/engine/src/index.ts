export { checkCodes } from './checks/codes.js';
export * from './fit/index.js';
export { UNUSED_SILENCE } from './fit/silence.js';
export * from './number/index.js';
export { fit, statementSources } from './pipeline.js';
export * from './spec/index.js';
