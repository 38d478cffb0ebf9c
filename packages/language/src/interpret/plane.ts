import { type Axis, axisOf, list, type PlaneRef, type Side, say, thicknessAxis } from '@dryfit/engine';
import { noSuchPlane } from '../checks/no-such-plane.js';
import { wrongSide } from '../checks/wrong-side.js';
import type { Plane } from '../generated/ast.js';
import type { StatementReading } from './reading.js';
import { wordsOfPlane } from './words.js';

/** A plane of one part; without a side written, the same side of it. Undefined if there is none. */
export function readPlane(node: Plane | undefined, reading: StatementReading, same?: Side): PlaneRef | undefined {
  const part = reading.parts.one(node?.ref);
  if (node?.of === 'cant' && part !== undefined) return readCant(node, part, reading);
  const plane = node?.side ?? same;
  if (!node || part === undefined || plane === undefined) return undefined;
  const source = reading.places.of(node);
  const of = node.of ?? 'part';
  if (of === 'groove' && !isWallOfGroove(part, plane, reading)) {
    const message = reading.walls.grooved.has(part)
      ? say`${wordsOfPlane(node)} is no wall: the groove of ${part} has its walls before and behind the panel's faces`
      : say`${part} sits in no groove, so there is no ${wordsOfPlane(node)}`;
    reading.report(noSuchPlane({ source, message, cure: say`Name a side of ${part}, or groove it in.` }));
    return undefined;
  }
  const notched = reading.walls.notched.get(part);
  if (of === 'notch' && !notched?.has(plane)) {
    const message = notched
      ? say`the notch of ${part} is cut in from its ${list([...notched.keys()])}, not from its ${plane}`
      : say`${part} has no notch, so there is no ${wordsOfPlane(node)}`;
    reading.report(noSuchPlane({ source, message, cure: say`Name a side of ${part}, or write the notch.` }));
    return undefined;
  }
  const several = of === 'notch' ? (notched?.get(plane) ?? 0) : 0;
  if (several > 1) {
    const message = say`${part} has ${several} notches cut in from its ${plane}, and ${wordsOfPlane(node)} may be the wall of any of them`;
    const once = [...(notched ?? [])].filter(([, count]) => count === 1).map(([side]) => `${part}.notch.${side}`);
    const cure =
      once.length > 0 ? say`Name ${list(once, ' or ')}, or a side of ${part}.` : say`Name a side of ${part}.`;
    reading.report(noSuchPlane({ source, message, cure }));
    return undefined;
  }
  return { part, plane, of, source };
}

function readCant(node: Plane, part: string, reading: StatementReading): PlaneRef | undefined {
  const source = reading.places.of(node);
  const corner = reading.walls.canted.get(part);
  if (corner) return { part, plane: corner, of: 'cant', source };
  const message = say`${part} has no cant, so there is no ${wordsOfPlane(node)}`;
  const cure = say`Name a side of ${part}, or write the cant: cant ${part} at front right { width … depth … }.`;
  reading.report(noSuchPlane({ source, message, cure }));
  return undefined;
}

function isWallOfGroove(part: string, side: Side, reading: StatementReading): boolean {
  const attitude = reading.parts.attitude(part);
  return reading.walls.grooved.has(part) && attitude !== undefined && axisOf(side) === thicknessAxis(attitude);
}

const RUNS: Readonly<Record<Axis, string>> = {
  x: 'left and right',
  y: 'front and rear',
  z: 'bottom and top',
};

/** True if the plane is one that a distance along an axis can be measured to; else it is reported. */
export function liesAlong(plane: PlaneRef, axis: Axis, what: string, reading: StatementReading): boolean {
  if (axisOf(plane.plane) === axis) return true;
  const name = `${plane.part}.${plane.of === 'part' ? '' : `${plane.of}.`}${plane.plane}`;
  reading.report(
    wrongSide({
      source: plane.source,
      message: say`${what} is measured between ${RUNS[axis]}, and ${name} lies across that`,
      cure: say`Name the ${RUNS[axis].replace(' and ', ' or ')} of ${plane.part}.`,
    }),
  );
  return false;
}
