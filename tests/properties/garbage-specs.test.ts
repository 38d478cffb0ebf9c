import {
  AXES,
  type FitResult,
  figuresOf,
  fit as fitSpec,
  Rational,
  reckon,
  resultsOf,
  SIDES,
  type Spec,
} from '@dryfit/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fixedFirst } from '../../packages/engine/src/testing/fixed-first.fixture.js';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { fitText } from '../support/read.js';

/** Lengths no cabinet has. */
const ODD = [
  Rational.ZERO,
  Rational.of(-7),
  Rational.of(1, 3),
  Rational.of(10n ** 30n),
  Rational.of(1n, 10n ** 30n),
  Rational.of(-1n, 7n ** 25n),
];

/**
 * Spoils a spec in places the seed numbers pick: lengths become absurd, names are exchanged for other names that
 * stand in the spec, sides turn round, list entries vanish or come twice.
 */
function spoil(spec: Spec, picks: readonly number[]): Spec {
  const names = spec.parts.map((part) => part.id);
  const leaves: ((value: number) => unknown)[] = [];
  const copy = (value: unknown, key: string): unknown => {
    if (value instanceof Map) return new Map([...value].map(([k, v]) => [k, copy(v, key)]));
    if (value instanceof Rational) return leaf(value, (n) => ODD[n % ODD.length]);
    if (typeof value === 'string') {
      if ((SIDES as readonly string[]).includes(value)) return leaf(value, (n) => SIDES[n % SIDES.length]);
      if (names.includes(value) && key !== 'id')
        return leaf(value, (n) => [...names, 'nobody', 'board'][n % (names.length + 2)]);
      if (['attitude', 'verb', 'material', 'dimension'].includes(key)) {
        const words: Record<string, readonly string[]> = {
          attitude: ['upright', 'level', 'facing'],
          verb: ['butt', 'mitre', 'groove', 'rebate', 'house', 'rest'],
          material: ['board', 'panel', 'nothing'],
          dimension: ['width', 'depth', 'height'],
        };
        return leaf(value, (n) => words[key]?.[n % (words[key]?.length ?? 1)]);
      }
      return value;
    }
    if (Array.isArray(value)) {
      const list = value.map((item) => copy(item, key));
      return leaf(list, (n) => (n % 2 === 0 ? list.slice(1) : [...list, ...list.slice(0, 1)]));
    }
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([k, v]) => [k, k.toLowerCase().includes('source') ? v : copy(v, k)]),
    );
  };
  let count = 0;
  const chosen = new Map<number, number>();
  const leaf = <T>(value: T, odd: (n: number) => unknown): unknown => {
    leaves.push(odd);
    const n = chosen.get(count++);
    return n === undefined ? value : odd(n);
  };
  copy(spec, '');
  const total = count;
  for (const n of picks) chosen.set(n % total, Math.floor(n / total));
  count = 0;
  return copy(spec, '') as Spec;
}

/** A shop whose entries are its own: one that looks them up elsewhere cannot be copied entry by entry. */
function plain(shop: Spec['shop']): Spec['shop'] {
  const { materials, bands, machines, connectors, patterns, jig, pose, limits, tolerances } = shop;
  return {
    materials: new Map(materials),
    bands: new Map(bands),
    machines: new Map(machines),
    connectors: new Map(connectors),
    patterns: new Map(patterns),
    jig,
    pose,
    limits,
    tolerances,
  };
}

/** A shop that says of everything how far off it comes. */
const TOLERANCES = `tolerances {
  saw plus 0.2mm minus 0.1mm  square 1mm over 1000mm  mitre ± 0.2 degrees  cuts ± 0.1mm  fence ± 0.1mm
  spacer ± 0.05mm  stop ± 0.1mm  line ± 0.2mm  cup 0.3mm  dirt 0.1mm
}
`;

function lookAtAll(result: FitResult): void {
  for (const part of result.fit.parts) {
    for (const axis of AXES) result.reasons(part.id, axis);
    for (const side of SIDES) result.place(part.id, side);
  }
  for (const joint of result.fit.joints) result.errors(joint.id);
  for (const { adds } of resultsOf(reckon(result.spec))) figuresOf(adds);
  for (const finding of result.findings) expect(finding.code).toMatch(/^[a-z]+(-[a-z]+)*$/);
}

test('a spec that makes no sense gives findings and never throws', async () => {
  let found = 0;
  const anything = fc.array(fc.nat(), { minLength: 1, maxLength: 8 });
  await fc.assert(
    fc.asyncProperty(plans, anything, async (plan, picks) => {
      const { spec } = await fitText(write(plan) + TOLERANCES);
      const result = fitSpec(spoil({ ...spec, shop: plain(spec.shop) }, picks));
      lookAtAll(result);
      found += result.findings.length;
    }),
    fixedFirst({ fixed: 20, numRuns: 150 }, plans, anything),
  );
  expect(found).toBeGreaterThan(0);
});
