import { describe, expect, it } from 'vitest';
import { workOut } from '../pipeline.js';
import { foundBy, words } from '../testing/found.js';
import { at, fact, flush, setBack } from '../testing/joint-items.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { doesNotClose } from './does-not-close.js';
import { namedBackwards } from './named-backwards.js';
import { partNotFixed } from './part-not-fixed.js';
import { sizeNotPositive } from './size-not-positive.js';

const box = () =>
  cabinet().part('lh, rh', 'upright').part('top, base', 'level').of('height', 720, 'lh').of('depth', 560, 'lh');

const joined = (spec: ReturnType<typeof box>, top = 'lh and rh', base = 'lh and rh') =>
  spec
    .joint('butt', 'top', `between ${top}`, flush('top', 'rear', 'front'))
    .joint('butt', 'base', `between ${base}`, flush('bottom', 'rear', 'front'));

describe('statements that do not agree', () => {
  it('may be facts of one and the same joint', () => {
    const spec = joined(box().over('width', 600, 'lh', 'rh'))
      .part('shelf', 'level')
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        flush('front', 'rear'),
        fact(setBack('front', 20, 'lh')),
        fact(at('bottom', 350, 'above', 'lh.bottom')),
      )
      .build();
    const [found, ...more] = foundBy(doesNotClose, spec);
    expect(more).toEqual([]);
    expect(found && words(found.message)).toContain('contradicts itself');
    expect(found && words(found.cure)).toContain('Take away one of its facts');
    expect(found?.about.statement).toBe('butt shelf between lh and rh');
  });

  it('are counted without the thickness of sheets, which is told as a reason', () => {
    const spec = joined(box().over('width', 600, 'lh', 'rh').of('width', 570, 'top')).build();
    const [found] = foundBy(doesNotClose, spec);
    expect(found && words(found.message)).toMatch(/^3 statements/);
    expect(found?.related.map(({ message }) => words(message)).filter((text) => text.includes('birch18'))).toHaveLength(
      2,
    );
  });
});

describe('two parts named in the wrong order', () => {
  const told = (spec: ReturnType<typeof box>) => {
    const built = spec.build();
    return {
      backwards: foundBy(namedBackwards, built).map(({ about }) => about.statement),
      others: [...foundBy(sizeNotPositive, built), ...foundBy(doesNotClose, built)],
    };
  };

  it('are told at the statement that is alone with its order', () => {
    const over = (low: string, high: string) => box().over('width', 600, low, high);
    expect(told(joined(over('lh', 'rh')))).toEqual({ backwards: [], others: [] });
    expect(told(joined(over('lh', 'rh'), 'rh and lh'))).toEqual({
      backwards: ['butt top between rh and lh'],
      others: [],
    });
    expect(workOut(joined(over('lh', 'rh'), 'rh and lh').build()).part('top')?.box).toBeUndefined();
    expect(told(joined(over('rh', 'lh')))).toEqual({ backwards: ['width over rh and lh'], others: [] });
  });

  it('are told where they make sizes disagree, and not where a number is simply wrong', () => {
    const sized = (width: string, top?: string) =>
      joined(box().over('width', 600, 'lh', 'rh').of('width', width, 'top'), top);
    expect(told(sized('564.6', 'rh and lh'))).toEqual({ backwards: ['butt top between rh and lh'], others: [] });
    const wrong = told(sized('570'));
    expect(wrong.backwards).toEqual([]);
    expect(wrong.others).toHaveLength(1);
  });

  it('are not told where a cabinet is merely too narrow for its sides', () => {
    const narrow = told(joined(box().over('width', 30, 'lh', 'rh')));
    expect(narrow.backwards).toEqual([]);
    expect(narrow.others).toHaveLength(1);
  });
});

describe('what is not fixed', () => {
  it('is told once, for all that moves together', () => {
    const spec = joined(cabinet().part('lh, rh', 'upright').part('top, base', 'level').over('width', 600, 'lh', 'rh'));
    const found = foundBy(partNotFixed, spec.build());
    expect(found.map(({ data }) => data?.axes)).toEqual([['y'], ['z']]);
    expect(found.map(({ about }) => about.parts)).toEqual([
      ['lh', 'rh', 'base', 'top'],
      ['lh', 'rh', 'top'],
    ]);
  });

  it('is told once for a part of which nothing is said, in every direction', () => {
    const found = foundBy(partNotFixed, sides().part('shelf', 'level').build());
    expect(found.map(({ data }) => data?.axes)).toEqual([['x', 'y', 'z']]);
  });

  it('goes with the line that the cure asks for', () => {
    const loose = sides().part('shelf', 'level').joint('butt', 'shelf', 'between lh and rh', flush('rear', 'front'));
    expect(foundBy(partNotFixed, loose.build()).map(({ cure }) => words(cure))).toEqual([
      expect.stringContaining('bottom … above lh.bottom'),
    ]);
    const fixed = loose.place('shelf', at('bottom', 200, 'above', 'lh.bottom')).build();
    expect(foundBy(partNotFixed, fixed)).toEqual([]);
    expect(workOut(fixed).part('shelf')?.box).toBeDefined();
  });
});
