import { describe, expect, it } from 'vitest';
import { Rational } from '../number/rational.js';
import { carcase, centred, mm, r, Sketch } from './sketch.fixture.js';
import { solve } from './solve.js';

describe('sizes', () => {
  it('follow from what stands around a part, with the chain of reasons from its low to its high side', () => {
    const s = carcase();
    const solution = solve(s);
    expect(s.size(solution, 'top.right', 'top.left')).toBe('564.6');
    expect(s.reasons(solution, 'top.right', 'top.left')).toEqual([
      '-1 butt top: top.left -lh.right',
      '-1 part lh: lh.right -lh.left',
      '1 width: rh.right -lh.left',
      '-1 part rh: rh.right -rh.left',
      '1 butt top: top.right -rh.left',
    ]);
    expect(solution.sensitivity(s.between('top.right', 'top.left')).map((t) => `${t.input} ${t.coefficient}`)).toEqual([
      'parameter wide 1',
      'thickness birch18 -2',
    ]);
    expect(solution.conflicts).toEqual([]);
    expect(solution.freeGroups).toEqual([]);
  });

  it('are measured from the least plane', () => {
    const s = carcase();
    const solution = solve(s);
    expect(s.at(solution, 'lh.left')).toBe('0 determined');
    expect(s.at(solution, 'top.right')).toBe('582.3 determined');
    expect(s.names([solution.origins[0] as number])).toEqual(['lh.left']);
    expect(solution.origins.slice(1)).toEqual([undefined, undefined]);
    const place = solution.explain([{ unknown: s.number('top.left'), coefficient: Rational.ONE }]);
    expect(place.map(({ equation }) => s.equations[equation]?.statement).sort()).toEqual(['butt top', 'part lh']);
  });

  it('halve what is left by centring', () => {
    const s = centred(carcase());
    const solution = solve(s);
    expect(s.size(solution, 'divider.left', 'lh.right')).toBe('273.45');
    expect(
      solution.sensitivity(s.between('divider.left', 'lh.right')).map((t) => `${t.input} ${t.coefficient}`),
    ).toEqual(['parameter wide 1/2', 'thickness birch18 -3/2']);
  });

  it('share openings out evenly, as thirds and sevenths if need be', () => {
    const s = new Sketch().state('height', 'top.bottom -base.top', mm('700'));
    for (const i of [1, 2]) s.sheet(`shelf${i}`, 'bottom', 'top');
    s.state('openings', 'shelf1.bottom -base.top -opening', mm('0'));
    s.state('openings', 'shelf2.bottom -shelf1.top -opening', mm('0'));
    s.state('openings', 'top.bottom -shelf2.top -opening', mm('0'));
    const solution = solve(s);
    // (700 − 2 · 17.7) / 3, worked by hand.
    expect(solution.valueOf(s.number('opening'))).toEqual(r('3323/15'));
    expect(solution.status(s.number('opening'))).toBe('determined');
    expect(s.size(solution, 'shelf2.bottom', 'shelf1.top')).toBe(`${3323 / 15}`);
    const sevenths = new Sketch().state('height', 'a.top -a.bottom', mm('100'));
    sevenths.state('openings', 'a.top -a.bottom -7*opening', mm('0'));
    expect(solve(sevenths).valueOf(sevenths.number('opening'))).toEqual(r('100/7'));
    expect(solution.sensitivity([{ unknown: s.number('opening'), coefficient: Rational.ONE }])).toEqual([
      { input: 'thickness birch18', coefficient: r('-2/3') },
    ]);
  });

  it('follow from the thickness rather than from a longer way round', () => {
    const s = carcase().state('width of lh', 'lh.right -top.left', mm('0'));
    expect(s.reasons(solve(s), 'lh.right', 'lh.left')).toEqual(['1 part lh: lh.right -lh.left']);
  });
});

describe('what is not fixed', () => {
  it('is named with the planes that move together', () => {
    const s = carcase().sheet('shelf', 'left', 'right').state('lip', 'lip.left -shelf.right', mm('5'));
    const solution = solve(s);
    expect(solution.freeGroups.map((g) => [g.axis, s.names(g.unknowns), g.freedom])).toEqual([
      [0, ['lip.left', 'shelf.left', 'shelf.right'], 1],
    ]);
    expect(s.at(solution, 'shelf.left')).toBe('nowhere free');
    expect(s.size(solution, 'lip.left', 'shelf.left')).toBe('22.7');
    expect(s.size(solution, 'shelf.left', 'lh.left')).toBe('free');
    expect(solution.explain(s.between('shelf.left', 'lh.left'))).toEqual([]);
    expect(solution.sensitivity(s.between('shelf.left', 'lh.left'))).toEqual([]);
  });

  it('is one group where one missing fact leaves several parts loose', () => {
    const s = new Sketch()
      .sheet('lh', 'left', 'right')
      .state('lip', 'lip.left -lh.left', mm('0'))
      .sheet('rh', 'left', 'right');
    centred(s);
    const [group, ...others] = solve(s).freeGroups;
    expect(others).toEqual([]);
    expect(group?.freedom).toBe(1);
    expect(group?.bodies.map((body) => s.names(body))).toEqual([
      ['divider.left', 'divider.right'],
      ['rh.left', 'rh.right'],
    ]);
  });

  it('includes a part whose far side nothing ties, and no length that touches no plane', () => {
    const s = carcase().state('lonely', 'opening -2*pitch', mm('3'));
    s.number('top2.left');
    const solution = solve(s);
    expect(solution.freeGroups.map((g) => s.names(g.unknowns))).toEqual([['top2.left']]);
    expect(solution.status(s.number('opening'))).toBe('free');
  });

  it('is counted on each axis for itself', () => {
    const s = new Sketch();
    s.number('p.front', 1);
    s.number('p.bottom', 2);
    s.number('q.bottom', 2);
    const solution = solve(s);
    expect(s.at(solution, 'p.front')).toBe('0 determined');
    expect(solution.freeGroups.map((g) => [g.axis, s.names(g.unknowns)])).toEqual([[2, ['q.bottom']]]);
  });
});

describe('contradictions', () => {
  it('name the statements, and how much they miss by', () => {
    const s = carcase().state('clear width', 'rh.left -lh.right', mm('570'));
    const solution = solve(s);
    expect(solution.conflicts).toHaveLength(1);
    const [conflict] = solution.conflicts;
    expect([...(conflict?.statements ?? [])].sort()).toEqual(['clear width', 'part lh', 'part rh', 'width']);
    expect(conflict?.blame).toBe('clear width');
    expect(conflict?.miss).toEqual(r('5.4'));
    expect(conflict?.axis).toBe(0);
    expect(s.size(solution, 'rh.right', 'lh.left')).toBe('contradicted');
    expect(s.size(solution, 'lh.right', 'lh.left')).toBe('17.7');
  });

  it('are measured on the statement, not on the sum that does not close', () => {
    const s = new Sketch().state('openings', 'a.bottom -base.top -opening', mm('0'));
    s.state('openings', 'b.bottom -a.bottom -opening', mm('0')).state(
      'openings',
      'top.bottom -b.bottom -opening',
      mm('0'),
    );
    s.state('height', 'top.bottom -base.top', mm('600')).state('pitch', 'opening', mm('210'));
    const [conflict] = solve(s).conflicts;
    // Three openings of 210 are 630; seen from the pitch each is 10 too many.
    expect(conflict?.blame).toBe('height');
    expect(conflict?.miss).toEqual(r('-30'));
    const other = solve({
      ...s,
      equations: s.equations.map((e) => (e.statement === 'height' ? { ...e, written: false } : e)),
    });
    expect(other.conflicts[0]?.blame).toBe('pitch');
    expect(other.conflicts[0]?.miss).toEqual(r('10'));
  });

  it('blame the statement that all of them share', () => {
    const s = new Sketch().state('a: height of lh', 'lh.top -lh.bottom', mm('720'));
    s.state('b: height of rh', 'rh.top -rh.bottom', mm('720')).state(
      'c: height of back',
      'back.top -back.bottom',
      mm('720'),
    );
    s.state('d: flush', 'rh.bottom -lh.bottom', mm('0')).state('d: flush', 'back.bottom -lh.bottom', mm('0'));
    s.state('e: step', 'rh.top -lh.top', mm('0')).state('f: step', 'back.top -lh.top', mm('0'));
    const wrong = s.equations.map((e) => (e.statement.startsWith('a') ? { ...e, value: mm('702') } : e));
    const [conflict] = solve({ ...s, equations: wrong }).conflicts;
    expect(conflict?.blame).toBe('a: height of lh');
    expect(conflict?.miss).toEqual(r('-18'));
  });

  it('are found one after the other, in different places', () => {
    const s = carcase()
      .state('clear width', 'rh.left -lh.right', mm('570'))
      .state('top', 'top.right -top.left', mm('564.6'));
    s.state('depth 1', 'p.right -p.left', mm('1')).state('depth 2', 'p.right -p.left', mm('2'));
    const sets = solve(s).conflicts.map((conflict) => [...conflict.statements].sort());
    expect(sets).toContainEqual(['depth 1', 'depth 2']);
    expect(sets[0]).toHaveLength(2);
    expect(sets.length).toBeGreaterThan(1);
  });

  it('spare sizes that no loop of theirs runs through', () => {
    const s = carcase().state('lip', 'lip.left -top.right', mm('5'));
    s.state('lip', 'lip.right -lip.left', mm('40')).state('top', 'top.right -top.left', mm('500'));
    const solution = solve(s);
    expect(s.size(solution, 'lip.right', 'lip.left')).toBe('40');
    expect(s.size(solution, 'lip.right', 'top.right')).toBe('45');
    expect(s.size(solution, 'lip.right', 'top.left')).toBe('contradicted');
  });
});
