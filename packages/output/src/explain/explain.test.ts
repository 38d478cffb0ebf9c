import { Rational } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { cabinetLabel } from '../batch.js';
import { locate, part, result } from '../periodicals.fixture.js';
import { explain, explainable } from './explain.js';
import { explainedText } from './text.js';

const MM = { units: 'mm' } as const;

function told(name: string, made = result()): string {
  return explain(made, name)
    .map((one) => explainedText(one, cabinetLabel(made.fit), { format: MM, locate }))
    .join('\n');
}

describe('an explanation', () => {
  it('of a part gives the facts that sum to its size, and where each slot is', () => {
    const text = told('shelf');
    expect(text).toContain(`width: 564.6 mm
   + 600  width 600 over lh and rh              bases.joinery:4
  - 17.7  lh is 17.7 thick (birch18, measured)  bases.joinery:3
  - 17.7  rh is 17.7 thick (birch18, measured)  bases.joinery:3
          shelf stands between lh and rh        bases.joinery:4
`);
    expect(text).toContain(`5 biscuit20 into its left end, which meets lh
  from its rear edge    48, 158, 248, 398, 478
  marks                 70, 180, 270, 420, 500 from zero (pattern deep5), less the setback of 22
  from its bottom face  9.5
  depth                 12.3
  spacer                22 = 12 + 10
  fence                 rear edge at the left fence
`);
  });

  it('of a joint gives both halves', () => {
    const text = told('shelf  /  lh ');
    expect(text).toContain('shelf: 5 biscuit20 into its left end, which meets lh');
    expect(text).toContain('lh: 5 biscuit20 into its right face, which meets shelf');
    expect(text).toContain('stop                 350 from its bottom end');
  });

  it('of a statement gives all its joints', () => {
    const joints = explain(result(), 'butt shelf between lh and rh');
    expect(joints.map((one) => one.kind === 'joint' && one.joint.id)).toEqual(['shelf / lh', 'shelf / rh']);
  });

  it('tells in which step of the glue-up it comes, and what closes on it', () => {
    // The fixture's back is let into nothing, so that the sides close on three boards.
    const steps = explain(result(), 'shelf').flatMap((one) => one.steps);
    expect(steps.map((step) => step.replace(/:.*/, ''))).toEqual(['step 1 of 2', 'step 2 of 2']);
    expect(told('shelf / rh')).toMatch(/glue-up\n {2}step 2 of 2: Put rh to .*shelf.*, moving to the left/);
  });

  it('of a joint tells what may be off at it, and what most of it is', () => {
    const tenth = Rational.of(1, 10);
    const of = { id: 'stop', origin: 'stop', words: ['stop for lh'], plus: tenth, minus: tenth } as const;
    const stack = { shift: Rational.ZERO, terms: [{ of, coefficient: Rational.TWO }] };
    const made = result({}, { errors: () => [{ kind: 'place', side: 'bottom', adds: { stack } }] });
    expect(told('shelf / lh', made)).toContain(
      'how far off it may come\n  place of the bottom: ± 0.2, at the worst ± 0.2; mostly stop for lh\n',
    );
  });

  it('of like parts gives each', () => {
    const shelves = [10, 2].map((n) => part(`shelf ${n}`, 'level', undefined));
    const explained = explain(result({ parts: shelves }), 'shelf');
    expect(explained.map((one) => one.kind === 'part' && one.part.id)).toEqual(['shelf 2', 'shelf 10']);
    expect(told('shelf 2', result({ parts: shelves }))).toContain('width: not fixed');
  });

  it('of an unknown name is empty, and the known names can be told', () => {
    expect(explain(result(), 'shelve')).toEqual([]);
    expect(explainable(result())).toEqual([
      'back',
      'base',
      'lh',
      'rh',
      'shelf',
      'top',
      'base / lh',
      'base / rh',
      'shelf / lh',
      'shelf / rh',
      'top / lh',
      'top / rh',
    ]);
  });
});
