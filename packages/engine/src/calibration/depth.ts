import { Rational } from '../number/rational.js';
import type { Connector } from '../spec/stock.js';
import type { MeasuredLength } from './base.js';

/** How deep a machine goes, beside how deep it is told to. */
export interface DepthFound {
  /** How much deeper than told; less than nothing: shallower. */
  readonly off: MeasuredLength;
  /** Plunges as they really are, with the machine as it is set. */
  readonly plunge: Connector['plunge'];
  /** What both halves together lack of the connector and its glue, edge to face, mm; less than nothing: to spare. */
  readonly short: Rational;
}

/**
 * From a test joint edge to edge that stays open by `gap` when it is pressed home, because the connector, `across` long,
 * stands on the bottom of both slots: they are (across − gap) / 2 deep, each. `undefined` where it closes: then they are at
 * least that deep, and no joint tells how much deeper.
 * @param within how far each of the two figures may be off, mm
 */
export function depthFromGap(
  connector: Connector,
  across: Rational,
  gap: Rational,
  within: Rational,
): DepthFound | undefined {
  if (gap.sign() <= 0) return undefined;
  const depth = across.sub(gap).div(Rational.TWO);
  return off(connector, depth.sub(connector.plunge.edge), within);
}

/** From a slot in an edge whose depth is measured. */
export const depthFromDepth = (connector: Connector, depth: Rational, within: Rational): DepthFound =>
  off(connector, depth.sub(connector.plunge.edge), within);

/** A stop of the machine that is off is off alike in face and edge. */
function off(connector: Connector, by: Rational, within: Rational): DepthFound {
  const { across, clearance, plunge } = connector;
  const real = { face: plunge.face.add(by), edge: plunge.edge.add(by) };
  const needed = across.add(clearance ?? Rational.ZERO);
  return { off: { value: by, within }, plunge: real, short: needed.sub(real.face).sub(real.edge) };
}
