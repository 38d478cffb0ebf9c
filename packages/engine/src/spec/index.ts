export * from './input.js';
export * from './order.js';
export * from './sides.js';
export * from './source.js';
export * from './spec.js';
export * from './stock.js';
