export type { Io, Stream } from './io.js';
export { run } from './run.js';
