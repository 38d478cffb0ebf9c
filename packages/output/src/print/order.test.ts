import { describe, expect, it } from 'vitest';
import { partNames } from './order.js';

const named = (id: string) => {
  const [kind = id, index] = id.split(' ');
  return { id, kind, index: index === undefined ? undefined : Number(index) };
};

describe('names of parts', () => {
  it('are drawn together where three or more follow each other', () => {
    const ids = ['shelf 10', 'shelf 2', 'shelf 3', 'shelf 4', 'base', 'shelf 6', 'shelf 7'];
    expect(partNames(ids.map(named))).toBe('base, shelf 2 to 4, shelf 6, shelf 7, shelf 10');
  });
});
