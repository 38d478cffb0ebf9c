import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fit } from '../pipeline.js';
import { SIDES, type Side } from '../spec/sides.js';
import type { Verb } from '../spec/spec.js';
import { connectNone, flush, outer, reference } from '../testing/joint-items.js';
import { HOLDS } from '../testing/shelf.fixture.js';
import { shop } from '../testing/shop-builder.js';
import { cabinet } from '../testing/spec-builder.js';
import { reckon } from '../tolerance/reckon.js';
import { figuresOf, resultsOf } from '../tolerance/results.js';

const PARTS = ['base', 'lh', 'front', 'back', 'nobody'];
const part = fc.constantFrom(...PARTS);
const side = fc.constantFrom<Side>(...SIDES);
const length = fc.oneof(fc.integer({ min: -50, max: 900 }), fc.constantFrom('1/3', '0', '1000000'));
const verb = fc.constantFrom<Verb>('butt', 'mitre', 'groove', 'rebate', 'house', 'rest');
const host = fc.oneof(
  part.map((name) => `to ${name}.cant`),
  fc.tuple(part, side).map(([name, on]) => `to ${name}.${on}`),
  fc.tuple(part, side, part, side).map(([a, s, b, t]) => `between ${a}.${s} and ${b}.${t}`),
  fc.tuple(part, part).map(([a, b]) => `between ${a} and ${b}`),
);

it('whatever is said of cants and parts on them, it is a finding or a fit and never a fault', () => {
  fc.assert(
    fc.property(
      fc.record({
        on: part,
        attitude: fc.constantFrom('upright' as const, 'facing' as const, 'level' as const),
        cants: fc.array(fc.tuple(part, side, side, length, length, length), { maxLength: 3 }),
        sizes: fc.array(fc.tuple(fc.constantFrom('width', 'depth', 'height'), length, part), { maxLength: 6 }),
        joints: fc.array(fc.tuple(verb, part, host, side, fc.boolean()), { maxLength: 5 }),
      }),
      ({ on, attitude, cants, sizes, joints }) => {
        const build = cabinet(shop({ tolerances: HOLDS }))
          .part('base', 'level')
          .part('lh', 'upright')
          .part('back', 'facing')
          .on(on, 'front', attitude)
          .connect('biscuit20', 'deep5');
        for (const [name, a, b, width, depth, height] of cants) build.cant(name, [a, b], { width, depth, height });
        for (const [dimension, by, name] of sizes) build.of(dimension as 'width', by, name);
        for (const [word, name, hosts, on2, glued] of joints)
          build.joint(
            word,
            name,
            hosts,
            flush(on2),
            ...(glued ? [connectNone('glued')] : [reference(on2), outer(on2)]),
          );
        const spec = build.build();
        const { findings, fit: found } = fit(spec);
        expect(findings.filter(({ code }) => code === 'check-failed')).toEqual([]);
        expect(found.parts).toHaveLength(4);
        for (const { id, adds } of resultsOf(reckon(spec))) {
          const { least, most } = figuresOf(adds).worst;
          for (const end of [least, most])
            expect(Number.isFinite('value' in end ? end.value : end.toNumber()), id).toBe(true);
        }
      },
    ),
    { numRuns: 400 },
  );
});
