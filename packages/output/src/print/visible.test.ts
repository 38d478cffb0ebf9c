import { describe, expect, it } from 'vitest';
import { visible } from './visible.js';

describe('text made safe to print', () => {
  it.each([
    ['\u001b]0;title\u0007', '␛]0;title␇'],
    ['a\u202Eb', 'a<U+202E>b'],
    ['\u009b1m', '<U+009B>1m'],
    ['\u007f', '␡'],
    ['a\ud800b', 'a<U+D800>b'],
  ])('shows %j', (raw, shown) => {
    expect(visible(raw)).toBe(shown);
  });

  it('leaves words, tabs and characters beyond the first plane alone', () => {
    expect(visible('Schrank\t½ ± 0.2 😀')).toBe('Schrank\t½ ± 0.2 😀');
  });
});
