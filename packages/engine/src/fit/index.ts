export * from './finding.js';
export * from './fit.js';
export * from './reason.js';
export * from './text.js';
