import { describe, expect, it } from 'vitest';
import { Progress } from './progress.js';

function watch(isTerminal: boolean) {
  let time = 0;
  const written: string[] = [];
  const progress = new Progress({ isTerminal, write: (text) => written.push(text) }, () => time);
  return {
    progress,
    written,
    at: (ms: number) => {
      time = ms;
    },
  };
}

describe('progress', () => {
  it('is silent for half a second, then speaks ten times a second at most, and wipes its line', () => {
    const { progress, written, at } = watch(true);
    progress.report(1, 100);
    at(499);
    progress.report(2, 100);
    expect(written).toEqual([]);
    at(500);
    progress.report(3, 100);
    at(599);
    progress.report(4, 100);
    expect(written).toEqual(['\rchecked 3 of 100 files']);
    progress.done();
    expect(written.at(-1)).toBe(`\r${' '.repeat('checked 3 of 100 files'.length)}\r`);
  });

  it('says beforehand that many files are being read, and nothing of a few', () => {
    const few = watch(true);
    few.progress.start(49);
    expect(few.written).toEqual([]);
    const many = watch(true);
    many.progress.start(50);
    expect(many.written).toEqual(['\rreading 50 files']);
  });

  it('is silent where there is no terminal', () => {
    const { progress, written, at } = watch(false);
    progress.start(1000);
    at(10_000);
    progress.report(1, 2);
    progress.done();
    expect(written).toEqual([]);
  });
});
