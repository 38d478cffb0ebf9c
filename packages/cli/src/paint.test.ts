import { describe, expect, it } from 'vitest';
import { paintFor } from './paint.js';

const paints = (isTerminal: boolean, env: Record<string, string>) =>
  paintFor({ isTerminal, write: () => {} }, env).error('x') !== 'x';

describe('colour', () => {
  it.each([
    [true, {}, true],
    [true, { NO_COLOR: '' }, true],
    [true, { NO_COLOR: '1' }, false],
    [true, { TERM: 'dumb' }, false],
    [false, {}, false],
    [false, { FORCE_COLOR: '1' }, false],
  ])('on a terminal: %s, with %j: %s', (isTerminal, env, coloured) => {
    expect(paints(isTerminal, env)).toBe(coloured);
  });
});
