export { solve } from './solve.js';
export * from './types.js';
