import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moved } from './moved.js';

/** Letters of its own for each stretch: of a letter put beside one like it nobody can say which of the two is new. */
const of = (...letters: string[]) => fc.string({ unit: fc.constantFrom(...letters) });

test('what stands outside the changed stretch is found again where it now stands', () => {
  fc.assert(
    fc.property(of('a', 'b'), of('c', 'd'), of('e', 'f'), of('g', 'h'), (head, old, fresh, tail) => {
      const shift = moved(head + old + tail, head + fresh + tail);
      for (let i = 0; i <= head.length; i += 1) expect(shift(i)).toBe(i);
      const begin = head.length + old.length;
      for (let i = 1; i <= tail.length; i += 1) expect(shift(begin + i)).toBe(head.length + fresh.length + i);
    }),
  );
});

test('no offset leaves the text, and their order stays', () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (before, now) => {
      const shift = moved(before, now);
      const all = Array.from({ length: before.length + 1 }, (_, i) => shift(i));
      expect(all).toEqual([...all].sort((a, b) => a - b));
      expect(all.every((offset) => offset >= 0 && offset <= now.length)).toBe(true);
    }),
  );
});
