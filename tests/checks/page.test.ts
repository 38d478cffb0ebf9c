import { describe, expect, it } from 'vitest';
import { at, examplesOf } from './page.js';

const fence = '```';
const page = [
  '# slot-near-edge',
  '',
  `${fence}joinery fails`,
  'cabinet A { }',
  fence,
  'words',
  `${fence}joinery limit passes=2 fails=1.999`,
  'width @ over a and b',
  fence,
].join('\n');

describe('examples of a page', () => {
  it('are read with what they have to show', () => {
    const [first, second] = examplesOf(page);
    expect(first).toEqual({ kind: 'fails', text: 'cabinet A { }\n', line: 3 });
    expect(second?.limit).toEqual({ passes: '2', fails: '1.999' });
    expect(second && at(second, '2')).toBe('width 2 over a and b\n');
  });

  it.each([
    `${fence}joinery shows\n${fence}`,
    `${fence}joinery fails\ncabinet`,
    `${fence}joinery limit passes=2\n${fence}`,
  ])('are refused when they do not say it: %j', (text) => {
    expect(() => examplesOf(text)).toThrow(/line 1/);
  });
});
