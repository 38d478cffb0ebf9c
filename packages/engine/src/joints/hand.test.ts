import { describe, expect, it } from 'vitest';
import type { Side } from '../spec/sides.js';
import type { Pose } from '../spec/stock.js';
import { fenceHand, heldMitre, heldSquare } from './hand.js';

const usual: Pose = { edge: 'down', face: 'up' };
const standing: Pose = { edge: 'down', face: 'down' };

describe('which fence the datum edge goes to', () => {
  // Redone with a piece of card: stand the left side up with its inner face toward you, and its rear edge is at
  // your right hand. Common practice, no source.
  it.each([
    ['left side, top end', 'right', 'top', 'right'],
    ['left side, bottom end', 'right', 'bottom', 'left'],
    ['right side, top end', 'left', 'top', 'left'],
    ['right side, bottom end', 'left', 'bottom', 'right'],
  ] as const)('%s, rear datum, reference up', (_, surface, reference, hand) => {
    expect(fenceHand(heldSquare(surface, reference, 'face'), 'rear', usual)).toBe(hand);
  });

  const sides: readonly Side[] = ['left', 'right', 'front', 'rear', 'bottom', 'top'];
  const opposite: Record<Side, Side> = {
    left: 'right',
    right: 'left',
    front: 'rear',
    rear: 'front',
    bottom: 'top',
    top: 'bottom',
  };
  const axis = (side: Side): string => ({ left: 'x', right: 'x', front: 'y', rear: 'y', bottom: 'z', top: 'z' })[side];
  const triples = sides.flatMap((surface) =>
    sides.flatMap((reference) =>
      sides
        .filter((datum) => new Set([axis(surface), axis(reference), axis(datum)]).size === 3)
        .map((datum) => ({ surface, reference, datum })),
    ),
  );

  it('is the same for both halves of a butt joint that share a reference plane, whatever the datum', () => {
    expect(triples).toHaveLength(48);
    for (const { surface, reference, datum } of triples) {
      const edge = fenceHand(heldSquare(surface, reference, 'edge'), datum, usual);
      const face = fenceHand(heldSquare(opposite[surface], reference, 'face'), datum, usual);
      expect(edge).toBe(face);
    }
  });

  it('is opposite for butt halves in a shop that stands a side on its reference end', () => {
    for (const { surface, reference, datum } of triples) {
      const edge = fenceHand(heldSquare(surface, reference, 'edge'), datum, standing);
      const face = fenceHand(heldSquare(opposite[surface], reference, 'face'), datum, standing);
      expect(edge).not.toBe(face);
    }
  });

  it('is opposite for halves that mirror each other in the joint plane', () => {
    for (const { surface, reference, datum } of triples) {
      for (const pose of [usual, standing]) {
        expect(fenceHand(heldSquare(surface, reference, 'edge'), datum, pose)).not.toBe(
          fenceHand(heldSquare(opposite[surface], reference, 'edge'), datum, pose),
        );
        for (const from of ['toe', 'heel'] as const) {
          const one = fenceHand(heldMitre(surface, reference, from), datum, pose);
          const other = fenceHand(heldMitre(reference, surface, from), datum, pose);
          expect(one).not.toBe(other);
        }
      }
    }
  });

  it('changes when a piece is turned end for end, and between mirror images with mirrored datum', () => {
    for (const { surface, reference, datum } of triples) {
      for (const role of ['edge', 'face'] as const) {
        const hand = fenceHand(heldSquare(surface, reference, role), datum, usual);
        expect(fenceHand(heldSquare(surface, opposite[reference], role), datum, usual)).not.toBe(hand);
        for (const mirror of ['x', 'y', 'z']) {
          const m = (side: Side): Side => (axis(side) === mirror ? opposite[side] : side);
          expect(fenceHand(heldSquare(m(surface), m(reference), role), m(datum), usual)).not.toBe(hand);
        }
      }
    }
  });
});
