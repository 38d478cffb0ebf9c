import {
  type Axis,
  axisOf,
  type FittedJoint,
  type FittedPart,
  highSide,
  lowSide,
  type PartId,
  thirdAxis,
} from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { plain } from './markdown.js';
import { surfaceName } from './surface.js';

/** Groove, rebate or housing that a joint's host gets: its size, and how far from the nearer edge beside it. */
export function recessLines(joint: FittedJoint, parts: ReadonlyMap<PartId, FittedPart>, lengths: Lengths): string[] {
  const host = parts.get(joint.host);
  if (host === undefined) return [];
  return host.cuts.flatMap((cut) => {
    if (!('box' in cut) || cut.kind === 'notch' || cut.surface !== joint.hostSide) return [];
    const across = thirdAxis(axisOf(cut.surface), cut.run);
    if (across === undefined || (cut.joint !== joint.statement && cut.joint !== joint.id)) return [];
    const extent = (axis: Axis) => lengths.of(cut.box.hi[axis].sub(cut.box.lo[axis]));
    const where =
      host.box && nearer(cut.box.lo[across].sub(host.box.lo[across]), host.box.hi[across].sub(cut.box.hi[across]));
    const side = where?.high ? highSide(across) : lowSide(across);
    const place = where ? `, ${lengths.of(where.at)} from its ${surfaceName(host, side)}` : '';
    const size = `${extent(across)} wide, ${extent(axisOf(cut.surface))} deep, ${extent(cut.run)} long`;
    return [`- ${cut.kind} in the ${surfaceName(host, cut.surface)} of ${plain(joint.host)}: ${size}${place}`];
  });
}

function nearer<T extends { lt(other: T): boolean }>(low: T, high: T): { readonly at: T; readonly high: boolean } {
  return high.lt(low) ? { at: high, high: true } : { at: low, high: false };
}
