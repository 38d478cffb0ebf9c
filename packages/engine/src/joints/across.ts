import { mitreFace, SQUARE_MITRE } from '../geometry/mitre.js';
import { Rational } from '../number/rational.js';
import { workingThickness } from '../sizes/thickness.js';
import type { JointStatement, PartSpec, Spec } from '../spec/spec.js';
import type { Machine } from '../spec/stock.js';

/**
 * c, the slots' distance from their reference, mm: as written; half the thickness when centred; else the
 * machine's base to centre. A machine that can be set takes half the nominal thickness, kept within its range,
 * so that one setting serves every batch of a sheet. On a mitre face the distance runs along the face; its
 * middle is irrational and taken to the nearest thousandth.
 */
export function acrossOf(
  spec: Spec,
  joint: JointStatement,
  part: PartSpec,
  machine: Machine,
  angle = SQUARE_MITRE,
): Rational {
  const material = spec.shop.materials.get(part.material);
  if (joint.across?.kind === 'at') return joint.across.distance.value;
  if (joint.across?.kind === 'centred' && material) {
    const thickness = workingThickness(material, spec);
    if (joint.verb === 'mitre') return Rational.of(Math.round(mitreFace(thickness, angle).value * 500), 1000);
    return thickness.div(Rational.TWO);
  }
  const { least, most } = machine.base;
  if (least.equals(most) || !material) return least;
  const middle = material.thickness.value.div(Rational.TWO);
  return Rational.max(least, Rational.min(most, middle));
}
