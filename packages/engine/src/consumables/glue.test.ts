import { describe, expect, test } from 'vitest';
import { Rational } from '../number/rational.js';
import type { Connector } from '../spec/stock.js';
import { connectorArea } from './glue.js';
import { isGlued } from './glued.js';

const sized = (shape: Connector['shape'], along: number, across: number, thickness: number): Connector =>
  ({
    name: 'one',
    shape,
    along: Rational.of(along),
    across: Rational.of(across),
    thickness: Rational.of(thickness),
  }) as Connector;

/** The outline of a flat piece with round edges, added up over many short chords. */
function outline(along: number, thickness: number): number {
  const steps = 20_000;
  let sum = 2 * (along - thickness);
  for (let i = 0; i < steps; i++) sum += (thickness / 2) * 2 * Math.sin(Math.PI / steps);
  return sum;
}

describe('what a connector takes of glue', () => {
  test.each([
    ['dowel', 8, 30, 8, outline(8, 8) * 30],
    ['loose tenon', 22, 40, 8, outline(22, 8) * 40],
    ['biscuit', 56, 23, 4, 2 * 56 * 23],
  ] as const)('%s %d x %d x %d', (shape, along, across, thickness, area) => {
    const reckoned = connectorArea(sized(shape, along, across, thickness)).toNumber();
    expect(reckoned).toBeGreaterThanOrEqual(area - 1e-3);
    expect(reckoned / area).toBeLessThan(1.000001);
  });
});

test.each([
  ['butt', undefined, true],
  ['mitre', undefined, true],
  ['house', undefined, true],
  ['groove', undefined, false],
  ['rest', undefined, false],
  ['butt', 'pinned', false],
  ['butt', 'glued and pinned', true],
  ['butt', 'not glued, so that it comes apart', false],
  ['butt', 'unglued', false],
  ['butt', 'screwed, without glue', false],
  ['groove', 'Glue', true],
] as const)('a %s without connectors, %s, is glued: %s', (verb, without, glued) => {
  expect(isGlued({ verb, without, halves: [] } as unknown as Parameters<typeof isGlued>[0])).toBe(glued);
});
