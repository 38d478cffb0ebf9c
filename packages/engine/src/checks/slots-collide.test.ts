import { describe, expect, it } from 'vitest';
import { foundBy, words } from '../testing/found.js';
import {
  across,
  at,
  connect,
  connectNone,
  cut,
  fact,
  flush,
  flushWith,
  outer,
  reference,
  setBack,
} from '../testing/joint-items.js';
import { connector, lines, material, shop } from '../testing/shop-builder.js';
import { cabinet, sides } from '../testing/spec-builder.js';
import { slotsCollide } from './slots-collide.js';

const told = (spec: Parameters<typeof foundBy>[1]) => foundBy(slotsCollide, spec).map(({ message }) => words(message));

describe('slots that meet other cuts of their part', () => {
  it('a notch', () => {
    const notched = (fromUnderside: string) =>
      sides()
        .part('shelf', 'level')
        .notch('lh, rh', ['front', 'bottom'], { depth: 80, height: 100 })
        .joint(
          'butt',
          'shelf',
          'between lh and rh',
          fact(at('bottom', 100, 'above', 'lh.bottom')),
          flush('rear', 'front'),
          across(fromUnderside),
          connect('biscuit20', lines(70, 490)),
        )
        .build();
    // The shelf stands on the notch; its slot is milled 2 to either side of its middle.
    expect(told(notched('5'))).toEqual([]);
    expect(told(notched('4.999'))).toEqual([
      'in lh and rh, its notch at the front and the slot for shelf 490 from the rear come within 3 of each other; the least is 3',
    ]);
    expect(told(notched('1.9'))[0]).toContain('run into each other');
  });

  it('a groove behind a mitre', () => {
    const mitred = (inset: number) =>
      cabinet(shop({ materials: [material('panel18', 18)] }))
        .part('lh, rh', 'upright', 'panel18')
        .part('top', 'level', 'panel18')
        .part('back', 'facing', 'ply6')
        .over('width', 600, 'lh', 'rh')
        .of('height', 700, 'lh, rh')
        .of('depth', 400, 'lh, rh')
        .joint(
          'mitre',
          'top',
          'between lh and rh',
          outer('top'),
          flush('rear', 'front'),
          across('18.6'),
          connect('biscuit20', lines(70, 330)),
        )
        .joint(
          'groove',
          'back',
          'between lh and rh',
          fact(setBack('rear', inset, 'lh')),
          fact(at('bottom', 0, 'above', 'lh.bottom')),
          cut({ width: 6, depth: 8, clearance: '0.5' }),
        )
        .joint('groove', 'back', 'to top.bottom', cut({ depth: 8, clearance: '0.5' }))
        .build();
    // The slot's rear end lies 70 − 32.84 = 37.16 from the rear.
    expect(told(mitred(16))).toEqual([]);
    const found = told(mitred(40));
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((message) => message.includes('the groove for back'))).toBe(true);
  });

  it('a groove across the rows of several parts, told once', () => {
    const shelved = (inset: number) =>
      sides()
        .part('one, two, three', 'level')
        .part('back', 'facing', 'ply6')
        .place('one', at('bottom', 100, 'above', 'lh.bottom'))
        .place('two', at('bottom', 300, 'above', 'lh.bottom'))
        .place('three', at('bottom', 500, 'above', 'lh.bottom'))
        .joint(
          'butt',
          'one, two, three',
          'between lh and rh',
          reference('bottom'),
          flush('rear', 'front'),
          connect('biscuit20', lines(70, 330)),
        )
        .joint(
          'groove',
          'back',
          'between lh and rh',
          fact(setBack('rear', inset, 'lh')),
          fact(at('bottom', 0, 'above', 'lh.bottom')),
          fact(at('top', 0, 'below', 'lh.top')),
          cut({ width: 6, depth: 8, clearance: '0.5' }),
        )
        .build();
    // The slots of the line at 70 reach back to 70 − 32.84 = 37.16.
    expect(told(shelved(16))).toEqual([]);
    const found = foundBy(slotsCollide, shelved(60));
    expect(found.map(({ message }) => words(message))).toEqual([
      'in lh and rh, the groove for back and the slot for one 70 from the rear run into each other, and so do 2 more pairs, with the rows for three and two as well',
    ]);
    expect(found[0]?.about.slots).toHaveLength(6);
    expect(found[0]?.marks).toHaveLength(6);
  });

  it('the slope of a mitre', () => {
    // Sides 720 high and 17.7 thick: the heel lies at 702.3, and a slot is 2 to either side of its middle.
    const shelved = (z: string) =>
      sides()
        .part('top, shelf', 'level')
        .joint('mitre', 'top', 'between lh and rh', outer('top'), flush('rear', 'front'), connectNone('glued'))
        .joint(
          'butt',
          'shelf',
          'between lh and rh',
          fact(at('bottom', z, 'above', 'lh.bottom')),
          flush('rear', 'front'),
          across('9.5'),
          connect('biscuit20', lines(70, 490)),
        )
        .build();
    // With the thinnest sheet, 17.5, the heel is 0.2 nearer to the end: 702.5 − 3 − 2 − 9.5.
    expect(told(shelved('688'))).toEqual([]);
    const [found, ...others] = foundBy(slotsCollide, shelved('688.001'));
    expect(others).toEqual([]);
    expect(words(found?.message ?? [])).toBe(
      'in lh and rh, the mitre with top and the slot for shelf 70 from the rear come within 3 of each other; the least is 3, and so does one more pair of these two rows',
    );
    expect(found?.marks?.map(({ part }) => part)).toEqual(['lh', 'lh', 'rh', 'rh']);
    // The shortest way from the slot's upper wall to the heel goes straight up the inner face.
    for (const { from, to } of found?.marks ?? [])
      expect(Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2])).toBeCloseTo(2.999, 3);
  });

  it('a corner cut off', () => {
    // On the left edge the cant ends 120 from the front; slots are 65.69 long at the surface.
    const canted = (line: string) =>
      sides()
        .part('base', 'level')
        .cant('base', ['left', 'front'], { width: 60, depth: 120 })
        .joint(
          'butt',
          'base',
          'between lh and rh',
          flush('bottom', 'rear', 'front'),
          connect('biscuit20', lines(70, line)),
        )
        .build();
    expect(told(canted('400'))).toEqual([]);
    expect(told(canted('405'))).toEqual([
      'in base, the slot for lh 405 from the rear and its cant at the left front come within 2.16 of each other; the least is 3',
    ]);
  });

  it('not the housing of their own joint', () => {
    const housed = sides()
      .part('shelf', 'level')
      .joint(
        'house',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        cut({ depth: 2 }),
        connect('tenon8', lines(70, 490)),
      )
      .build();
    expect(told(housed)).toEqual([]);
  });
});

it('housings in one face leave a web between them, or none at all', () => {
  const housed = (second: string) =>
    sides()
      .part('one, two', 'level')
      .place('one', at('bottom', 100, 'above', 'lh.bottom'))
      .place('two', at('bottom', second, 'above', 'lh.bottom'))
      .joint('house', 'one', 'between lh and rh', flush('rear', 'front'), cut({ depth: 5 }))
      .joint('house', 'two', 'between lh and rh', flush('rear', 'front'), cut({ depth: 5 }))
      .build();
  expect(told(housed('120.7'))).toEqual([]);
  expect(told(housed('120'))).toEqual([
    'in lh and rh, the housing for one and the housing for two come within 2.3 of each other; the least is 3',
  ]);
  expect(told(housed('117.7'))).toEqual([]);
});

describe('grooves from both faces of a divider', () => {
  const grooved = (sheet: number, tolerance: string, depth: string) =>
    cabinet(shop({ materials: [material('sheet', `${sheet} ± ${tolerance}`)] }))
      .part('lh, divider, rh', 'upright', 'sheet')
      .part('one, two', 'facing', 'ply6')
      .over('width', 800, 'lh', 'rh')
      .of('height', 300, 'lh, rh, divider')
      .of('depth', 320, 'lh, rh, divider')
      .between('width', 380, 'lh', 'divider')
      .place('divider, rh', flushWith('bottom', 'lh'))
      .place('divider, rh', flushWith('rear', 'lh'))
      .joint(
        'groove',
        'one',
        'between lh and divider',
        fact(setBack('rear', 16, 'lh')),
        fact(at('bottom', 0, 'above', 'lh.bottom')),
        fact(at('top', 0, 'below', 'lh.top')),
        cut({ width: 6, depth, clearance: '0.5' }),
      )
      .joint(
        'groove',
        'two',
        'between divider and rh',
        fact(setBack('rear', 16, 'lh')),
        fact(at('bottom', 0, 'above', 'lh.bottom')),
        fact(at('top', 0, 'below', 'lh.top')),
        cut({ width: 6, depth, clearance: '0.5' }),
      )
      .build();

  it('leave what the sheet has left, at its thinnest', () => {
    expect(told(grooved(18, '0', '7.5'))).toEqual([]);
    expect(told(grooved(18, '0', '7.501'))).toHaveLength(1);
    expect(told(grooved(18, '0.2', '7.4'))).toEqual([]);
    expect(told(grooved(18, '0.2', '7.401'))[0]).toContain('come within 3 of each other');
  });
});

it('an end slot and a slot in the face are as near as the thinnest sheet brings them', () => {
  const plate = connector('plate', 'biscuit', { along: 40, across: 15, thickness: 4, face: 8, machine: 'joiner' });
  const posted = (tolerance: string) =>
    cabinet(shop({ materials: [material('sheet', `18 ± ${tolerance}`)], connectors: [plate] }))
      .part('lh, rh', 'upright')
      .part('shelf', 'level', 'sheet')
      .part('post', 'upright')
      .over('width', 600, 'lh', 'rh')
      .of('height', 700, 'lh, rh')
      .of('depth', 400, 'lh, rh')
      .of('height', 100, 'post')
      .place('rh', flushWith('bottom', 'lh'))
      .joint(
        'butt',
        'shelf',
        'between lh and rh',
        fact(at('bottom', 100, 'above', 'lh.bottom')),
        flush('rear', 'front'),
        across(5),
        connect('plate', lines(70, 200)),
      )
      .joint(
        'butt',
        'post',
        'to shelf.top',
        fact(at('left', 0, 'right of', 'lh.right')),
        fact(flushWith('rear', 'shelf')),
        fact(flushWith('front', 'shelf')),
        reference('left'),
        connect('plate', lines(70, 200)),
      )
      .build();
  // From the underside the end slot reaches up to 7; the slot from above comes down to 18 − 8 = 10.
  expect(told(posted('0'))).toEqual([]);
  expect(told(posted('0.001'))).toHaveLength(1);
  expect(told(posted('0.2'))[0]).toContain('come within 2.8 of each other');
});
