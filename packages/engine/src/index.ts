export * from './fit/index.js';
export * from './number/index.js';
export * from './spec/index.js';
