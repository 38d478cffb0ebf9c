import {
  type Axis,
  type FittedPart,
  highSide,
  lowSide,
  Rational,
  SIDES,
  type Side,
  thicknessAxis,
} from '@dryfit/engine';
import { isJoint, type Joint } from '../../generated/ast.js';
import type { Case } from '../fix.js';
import { decent, writtenAs } from './figures.js';
import { statementOf } from './place.js';

/** A loose side of a part. */
export interface Loose {
  readonly part: string;
  readonly side: Side;
}

/** The sides that a finding says are not fixed. */
export function looseSides({ finding, result }: Case): readonly Loose[] {
  const planes = Array.isArray(finding.data?.planes) ? (finding.data.planes as readonly string[]) : [];
  return planes.flatMap((plane) => {
    const at = plane.lastIndexOf('.');
    const [part, side] = [plane.slice(0, at), SIDES.find((one) => one === plane.slice(at + 1))];
    return side && result?.fit.parts.some(({ id }) => id === part) ? [{ part, side }] : [];
  });
}

export const partCalled = ({ result }: Case, id: string): FittedPart | undefined =>
  result?.fit.parts.find((one) => one.id === id);

/** The joint by which a part enters another. */
export function jointInto(about: Case, id: string): Joint | undefined {
  const statement = about.result?.spec.statements.find((one) => one.kind === 'joint' && one.entering.includes(id));
  const node = statement && statementOf(about, statement.id);
  return isJoint(node) ? node : undefined;
}

/** Facts that put a part midway between the two that lie across the axis furthest apart, or a decent way from the first. */
export function* factsBetween({ result, unit }: Case, lead: string, axis: Axis): Iterable<string> {
  const across = (result?.fit.parts ?? []).filter(
    ({ id, attitude, box }) => id !== lead && box !== undefined && thicknessAxis(attitude) === axis,
  );
  const sorted = [...across].sort((a, b) => (a.box && b.box ? a.box.lo[axis].compare(b.box.lo[axis]) : 0));
  const [low, high] = [sorted[0], sorted.at(-1)];
  if (!low?.box || !high?.box || low === high) return;
  yield `centred between ${low.id} and ${high.id}`;
  const room = high.box.lo[axis].sub(low.box.hi[axis]);
  for (const share of [2, 3]) {
    const by = writtenAs(decent(room.div(Rational.of(share)), unit, 'less'), unit);
    yield `${lowSide(axis)} ${by} ${TOWARD[axis]} ${low.id}.${highSide(axis)}`;
  }
}

const TOWARD: Record<Axis, string> = { x: 'right of', y: 'behind', z: 'above' };
