import { describe, expect, it } from 'vitest';
import { workOut } from '../pipeline.js';
import { against, at, cut, fact, flush, setBack } from './joint-items.js';
import { cabinet } from './spec-builder.js';
import { mm } from './written.js';

const base = cabinet()
  .part('lh, rh', 'upright')
  .part('top, base, shelf', 'level')
  .part('back', 'facing', 'ply6')
  .over('width', 600, 'lh', 'rh')
  .of('height', 720, 'lh')
  .of('depth', 560, 'lh')
  .connect('biscuit20', 'deep5')
  .joint('butt', 'top', 'between lh and rh', flush('top', 'rear', 'front'))
  .joint('butt', 'base', 'between lh and rh', flush('bottom', 'rear', 'front'))
  .joint(
    'groove',
    'back',
    'between lh and rh, base and top',
    fact(setBack('rear', 16, 'lh')),
    cut({ width: 6, depth: 8, clearance: '0.5' }),
  )
  .joint(
    'butt',
    'shelf',
    'between lh and rh',
    fact(at('bottom', 350, 'above', 'base.bottom')),
    fact(against('rear', 'back.groove.front')),
    flush('front'),
  );

describe('a cabinet built line by line', () => {
  it('comes out with the sizes worked by hand', () => {
    const context = workOut(base.build());
    const extents = (id: string) => ['x', 'y', 'z'].map((axis) => context.part(id)?.extent[axis as 'x' | 'y' | 'z']);
    expect(extents('shelf')).toEqual([mm('564.6'), mm(538), mm('17.7')]);
    expect(extents('back')).toEqual([mm('579.6'), mm('5.8'), mm('699.6')]);
    expect(context.solved.solution.freeGroups).toEqual([]);
    expect(context.solved.solution.conflicts).toEqual([]);
  });

  it('gives every statement an id and a place of its own', () => {
    const { statements } = base.build();
    expect(new Set(statements.map((statement) => statement.id)).size).toBe(statements.length);
    expect(new Set(statements.map((statement) => statement.source.start)).size).toBe(statements.length);
  });
});
