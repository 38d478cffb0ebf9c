import { add, cross, dot, negate, normal, subtract, type Vector } from '../geometry/vector.js';
import type { Side } from '../spec/sides.js';
import type { Pose } from '../spec/stock.js';

/** What a half looks like to whoever holds it, as directions in the cabinet frame. */
export interface Held {
  /** Outward normal of the slotted surface. */
  readonly surface: Vector;
  /** From the slots toward the reference plane (a mitre: toward its toe or heel), within the surface. */
  readonly towardReference: Vector;
  readonly role: 'edge' | 'face' | 'mitre';
}

/**
 * The fence the datum edge goes to. The operator looks into the slotted surface along v = −n; u points up as
 * the piece is held: an edge with its reference down has u away from the reference, a face with its reference
 * plane up has u toward it; d points along the run toward the datum side. The datum is at the right when
 * (v × u)·d > 0. Mitre faces are held as edges are.
 */
export function fenceHand(held: Held, datum: Side, pose: Pose): 'left' | 'right' {
  const way = held.role === 'face' ? pose.face : pose.edge;
  const up = way === 'up' ? held.towardReference : negate(held.towardReference);
  const look = negate(held.surface);
  return dot(cross(look, up), normal(datum)) > 0 ? 'right' : 'left';
}

/** A square-cut edge or a face, with its reference on `reference`. */
export function heldSquare(surface: Side, reference: Side, role: 'edge' | 'face'): Held {
  return { surface: normal(surface), towardReference: normal(reference), role };
}

/**
 * A face bevelled at 45° between the end `end` and the inner face, its toe on `outer`: it looks toward the end
 * and away from the outer side, and its toe lies toward the end and the outer side.
 */
export function heldMitre(end: Side, outer: Side, from: 'toe' | 'heel'): Held {
  const surface = subtract(normal(end), normal(outer));
  const toToe = add(normal(end), normal(outer));
  return { surface, towardReference: from === 'toe' ? toToe : negate(toToe), role: 'mitre' };
}
