import type { Unknown } from '../solve/index.js';
import { AXES, type Axis, axisOf, highSide, lowSide, SIDES, type Side, thicknessAxis } from '../spec/sides.js';
import type { NotchStatement, PartId, PartSpec, PlaneRef } from '../spec/spec.js';

/** The two sides that meet where a notch is cut. */
type Corner = NotchStatement['corner'];

const axisNumber = (axis: Axis): 0 | 1 | 2 => AXES.indexOf(axis) as 0 | 1 | 2;

const PLACE = Object.fromEntries(SIDES.map((side, i) => [side, i])) as Record<Side, number>;
/** Bottom and top, which follow each other in {@link SIDES}. */
const UPRIGHT_SIDES: readonly Side[] = SIDES.filter((side) => axisOf(side) === 'z');

/**
 * Numbers the unknown planes of a cabinet: six a part, two for a groove's walls, two for a notch's, and
 * auxiliary unknowns such as the common opening of evenly spaced shelves.
 */
export class Planes {
  readonly unknowns: Unknown[] = [];
  private readonly numbers = new Map<string, number>();
  private readonly parts = new Map<PartId, PartSpec>();
  /** Number of each part's first side; the others follow in the order of {@link SIDES}. */
  private readonly firsts = new Map<PartId, number>();

  constructor(parts: readonly PartSpec[]) {
    for (const part of parts) {
      if (this.parts.has(part.id)) continue;
      this.parts.set(part.id, part);
      // A turned part has no planes but its bottom and top across the axes: the others are worked out from these.
      const sides = part.on ? UPRIGHT_SIDES : SIDES;
      this.firsts.set(part.id, this.unknowns.length - PLACE[sides[0] as Side]);
      for (const side of sides) this.add(`${part.id}.${side}`, axisOf(side), true);
    }
  }

  /** The part of that id; undefined when the spec names one that does not exist. */
  part(id: PartId): PartSpec | undefined {
    return this.parts.get(id);
  }

  /** Number of one of a part's six planes. */
  side(part: PartId, side: Side): number | undefined {
    const first = this.firsts.get(part);
    if (first === undefined || (this.parts.get(part)?.on && axisOf(side) !== 'z')) return undefined;
    return first + PLACE[side];
  }

  /** Number of a groove's wall; it exists once {@link addGroove} has been called for the part. */
  groove(part: PartId, side: Side): number | undefined {
    return this.numbers.get(`${part}.groove.${side}`);
  }

  /** Number of the wall inside `side` of the notch at that corner; of the only notch there if no corner is given. */
  notch(part: PartId, side: Side, corner?: Corner): number | undefined {
    return this.numbers.get(corner ? notchKey(part, side, corner) : `${part}.notch.${side}`);
  }

  /** Number of whatever plane a spec refers to. */
  of(ref: PlaneRef): number | undefined {
    if (ref.of === 'groove') return this.groove(ref.part, ref.plane);
    if (ref.of === 'notch') return this.notch(ref.part, ref.plane);
    if (ref.of === 'cant') return undefined;
    return this.side(ref.part, ref.plane);
  }

  /** Walls of the groove that `part` sits in, on the axis of its thickness. */
  addGroove(part: PartSpec): void {
    if (part.on) return;
    const axis = thicknessAxis(part.attitude);
    for (const side of [lowSide(axis), highSide(axis)]) {
      if (this.groove(part.id, side) === undefined) this.add(`${part.id}.groove.${side}`, axis, true);
    }
  }

  /** Two notches of a part may both be cut in from one side, each by a length of its own. */
  addNotchWall(part: PartId, side: Side, corner: Corner): number {
    const known = this.notch(part, side, corner);
    if (known !== undefined) return known;
    const key = notchKey(part, side, corner);
    const number = this.add(this.notch(part, side) === undefined ? `${part}.notch.${side}` : key, axisOf(side), true);
    this.numbers.set(key, number);
    return number;
  }

  /** An unknown that is a length, not a plane. */
  addLength(label: string, axis: Axis): number {
    return this.add(label, axis, false);
  }

  /** Number of an auxiliary unknown by its label. */
  length(label: string): number | undefined {
    return this.numbers.get(label);
  }

  private add(label: string, axis: Axis, plane: boolean): number {
    const number = this.unknowns.length;
    this.unknowns.push({ axis: axisNumber(axis), label, plane });
    this.numbers.set(label, number);
    return number;
  }
}

/** The wall of a notch by its corner, whichever of its two sides is named first. */
const notchKey = (part: PartId, side: Side, corner: Corner): string =>
  `${part}.notch at ${SIDES.filter((one) => corner.includes(one)).join(' ')}.${side}`;

/** How a spec would write the plane. */
export function planeName(ref: PlaneRef): string {
  if (ref.of === 'cant') return `${ref.part}.cant`;
  return ref.of === 'part' ? `${ref.part}.${ref.plane}` : `${ref.part}.${ref.of}.${ref.plane}`;
}
