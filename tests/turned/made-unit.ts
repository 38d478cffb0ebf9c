import type { Fit, FittedJoint, FittedPart, Half, Rational, Side } from '@dryfit/engine';
import type { Corner } from './corner.js';

/** A place or a direction in plan: x to the right, y to the rear. */
export type Plan = readonly [number, number];

const add = (a: Plan, b: Plan, k = 1): Plan => [a[0] + k * b[0], a[1] + k * b[1]];
const dot = (a: Plan, b: Plan): number => a[0] * b[0] + a[1] * b[1];
const cross = (a: Plan, b: Plan): number => a[0] * b[1] - a[1] * b[0];
const unit = (a: Plan): Plan => [a[0] / Math.hypot(...a), a[1] / Math.hypot(...a)];

const DEGREE = Math.PI / 180;
const OUT: Readonly<Record<string, Plan>> = { left: [-1, 0], right: [1, 0], front: [0, -1], rear: [0, 1] };
const outOf = (side: Side): Plan => OUT[side] as Plan;
const axisOf = (side: Side): 0 | 1 => (side === 'left' || side === 'right' ? 0 : 1);

/**
 * The unit as it is built, in plain floating numbers: parts sawn to the list, slots where stop, fence, spacers, eye and
 * dirt put them; base and top first, then each part so that its slots meet theirs, and a rule laid across. How far each
 * thing is off is asked for by its name, and all that is asked for is kept in `asked`.
 */
export class MadeUnit {
  readonly asked = new Set<string>();

  constructor(
    private readonly corner: Corner,
    private readonly fit: Fit,
    private readonly jig: boolean,
    private readonly offOf: (name: string) => number,
  ) {}

  private off(name: string): number {
    this.asked.add(name);
    return this.offOf(name);
  }

  private part(id: string): FittedPart {
    const part = this.fit.parts.find((one) => one.id === id);
    if (!part) throw new Error(`there is no ${id}`);
    return part;
  }

  joint(id: string): FittedJoint {
    const joint = this.fit.joints.find((one) => one.id === id);
    if (!joint) throw new Error(`there is no joint ${id}`);
    return joint;
  }

  private thickness(id: string): number {
    return (this.part(id).cutSize?.thickness.toNumber() ?? Number.NaN) + this.off(`thickness ${id} 0`);
  }

  /** A sawn size; the face's is the root of its legs. */
  private sawn(id: string, axis: 'x' | 'y'): number {
    const { legX, legY } = this.corner;
    const planned = id === 'face' ? Math.hypot(Number(legX), Number(legY)) : this.part(id).extent[axis]?.toNumber();
    return (planned ?? Number.NaN) + this.off(`saw ${id} ${axis}`);
  }

  private size(id: string, axis: 0 | 1): number {
    const { attitude } = this.part(id);
    const thick = (attitude === 'upright' && axis === 0) || (attitude === 'facing' && axis === 1);
    return thick ? this.thickness(id) : this.sawn(id, axis === 0 ? 'x' : 'y');
  }

  /** From its datum edge to the first slot as milled. */
  private along({ id }: FittedJoint, half: Half): number {
    const name = `${id} ${half.part}`;
    const line = (half.slots[0]?.fromZero.toNumber() ?? Number.NaN) + this.off(`line along ${name}`);
    if (!this.jig || half.turn) return line - half.setback.toNumber();
    return line + this.off(`fence ${half.hand}`) - this.spacers(name, half) - this.off(`dirt fence ${name}`);
  }

  private spacers(name: string, { spacer: { kind, stack, width } }: Half): number {
    if (kind === 'none') return 0;
    if (kind !== 'stock') return width.toNumber() + this.off(`block ${name}`);
    const nth = (piece: Rational, i: number) => stack.slice(0, i + 1).filter((other) => other.equals(piece)).length;
    return stack.reduce((sum, piece, i) => sum + piece.toNumber() + this.off(`spacer ${piece} ${nth(piece, i)}`), 0);
  }

  /** From what it is measured from to the slots as milled, across the joint. */
  private across({ id }: FittedJoint, half: Half): number {
    const name = `${id} ${half.part}`;
    const set = half.across.toNumber() + this.off('machine joiner');
    if (half.role !== 'face') return set - this.off(`dirt under ${name}`) - this.off(`cup ${half.part}`);
    // The machine's base lies on the cant itself.
    if (half.turn) return set - this.off(`dirt under ${name}`);
    if (!this.jig) return set + this.off(`line across ${name}`);
    return set + this.off(`stop ${name}`) - this.off(`dirt stop ${name}`);
  }

  /** Where a side of a level part lies; its left front corner is where everything is measured from. */
  private levelSide(level: string, side: Side): number {
    return side === 'left' || side === 'front' ? 0 : this.sawn(level, side === 'right' ? 'x' : 'y');
  }

  /** Where a side of a part that stands square lies, once its slots meet those of the base. */
  side(id: string, side: Side): number {
    if (id === 'base' || id === 'top') return this.levelSide(id, side);
    const joint = this.joint(`${id} / base`);
    const [own, host] = joint.halves as [Half, Half];
    const isAcross = axisOf(own.from.side) === axisOf(side);
    const [mine, other] = isAcross ? [own.from.side, host.from.side] : [own.datum, host.datum];
    const from = (half: Half) => (isAcross ? this.across(joint, half) : this.along(joint, half));
    const axis = axisOf(side);
    const slot = this.levelSide('base', other) - outOf(other)[axis] * from(host);
    const held = slot + outOf(mine)[axis] * from(own);
    return mine === side ? held : held + outOf(side)[axis] * this.size(id, axis);
  }

  /** The ends of a level part's cant as it is cut, left one first. */
  cant(level: string): readonly [Plan, Plan] {
    const { x, y, legX, legY } = this.corner;
    const [a, b] = [Number(legX) + this.off(`saw ${level}.cant x`), Number(legY) + this.off(`saw ${level}.cant y`)];
    const [cx, cy] = [this.levelSide(level, x), this.levelSide(level, y)];
    const onY: Plan = [cx - outOf(x)[0] * a, cy];
    const onX: Plan = [cx, cy - outOf(y)[1] * b];
    return onY[0] < onX[0] ? [onY, onX] : [onX, onY];
  }

  /** Along the cant as it is cut, and out of the cabinet. */
  private frame(level: string): { readonly along: Plan; readonly out: Plan } {
    const [left, right] = this.cant(level);
    const along = unit(add(right, left, -1));
    return { along, out: this.corner.y === 'front' ? [along[1], -along[0]] : [-along[1], along[0]] };
  }

  /** The outer face of the turned part seen from above, left end first, once its slots meet those along the cant. */
  face(level: string): readonly [Plan, Plan] {
    const joint = this.joint(`face / ${level}`);
    const [own, host] = joint.halves as [Half, Half];
    const { along, out } = this.frame(level);
    const [left, right] = this.cant(level);
    const fromLeft = host.datum === 'left';
    const way = fromLeft ? 1 : -1;
    const slot = add(
      add(fromLeft ? left : right, along, way * this.along(joint, host)),
      out,
      -this.across(joint, host),
    );
    const held = add(add(slot, along, -way * this.along(joint, own)), out, this.across(joint, own));
    const other = add(held, along, way * this.sawn('face', 'x'));
    return fromLeft ? [held, other] : [other, held];
  }

  /** The outside size along an axis with the face laid on the cant from outside: from the far side of the base to its corner. */
  outside(axis: 0 | 1): number {
    const joint = this.joint('face / base');
    const { along, out } = this.frame('base');
    const [left, right] = this.cant('base');
    const [own, host] = joint.halves;
    const fromLeft = !host || host.datum === 'left';
    const way = fromLeft ? 1 : -1;
    const by =
      own && host ? way * (this.along(joint, host) - this.along(joint, own)) : this.off('line by hand face / base x');
    const held = add(add(fromLeft ? left : right, along, by), out, this.thickness('face'));
    const corners = [held, add(held, along, way * this.sawn('face', 'x'))].map((corner) => corner[axis]);
    const near = axis === 0 ? this.corner.x : this.corner.y;
    const far = this.levelSide('base', ({ left: 'right', right: 'left', front: 'rear', rear: 'front' } as const)[near]);
    return Math.max(...corners.map((corner) => Math.abs(corner - far)));
  }

  /** How far the face stands proud of the cant. */
  step(level: string): number {
    const [corner] = this.face(level);
    return dot(add(corner, this.cant(level)[0], -1), this.frame(level).out);
  }

  /** How far an end of it stands beyond that of the cant. */
  flush(level: string, side: 'left' | 'right'): number {
    const i = side === 'left' ? 0 : 1;
    const beyond = dot(add(this.face(level)[i], this.cant(level)[i], -1), this.frame(level).along);
    return side === 'left' ? -beyond : beyond;
  }

  /** Where the outer arris of a part beside the face comes to stand, seen from above. */
  private toe(id: 'stub' | 'end'): Plan {
    const { x, y } = this.corner;
    return [this.side(id, x), this.side(id, y)];
  }

  /** From toe to toe beside the face, less what is planned. */
  span(): number {
    const { legX, legY } = this.corner;
    return Math.hypot(...add(this.toe('stub'), this.toe('end'), -1)) - Math.hypot(Number(legX), Number(legY));
  }

  gap(host: 'stub' | 'end'): number {
    const { contact, enteringSide } = this.joint(`face / ${host}`);
    const high = contact ? contact.hi.sub(contact.lo).toNumber() : Number.NaN;
    const { legX, legY } = this.corner;
    const planned = Math.hypot(Number(legX), Number(legY));
    return planned + this.span() - this.sawn('face', 'x') + this.off(`square face ${enteringSide}`) * (high / 1000);
  }

  /** The corner where the two mitred ends meet, drawn out: toes together, and from there along the outer faces and in. */
  private mitre(host: 'stub' | 'end') {
    const { x, y } = this.corner;
    const joint = this.joint(`face / ${host}`);
    const { along, out } = this.frame('base');
    const faceFrom: Plan = joint.enteringSide === 'left' ? along : [-along[0], -along[1]];
    const hostFrom: Plan = host === 'stub' ? [-outOf(x)[0], 0] : [0, -outOf(y)[1]];
    const hostOut = outOf(host === 'stub' ? y : x);
    const beta = joint.mitre?.angle ?? Number.NaN;
    const heel = (part: string, from: Plan, outside: Plan): Plan => {
      const t = this.thickness(part);
      const bevel = (beta + this.off(`bevel face / ${host} ${part}`)) * DEGREE;
      return [from[0] * t * Math.tan(bevel) - outside[0] * t, from[1] * t * Math.tan(bevel) - outside[1] * t];
    };
    return { face: heel('face', faceFrom, out), host: heel(host, hostFrom, hostOut), faceFrom, hostFrom };
  }

  /** How far the heels stand apart with the toes together: the longer mitre's heel from the line of the other. */
  opening(host: 'stub' | 'end'): number {
    const mitre = this.mitre(host);
    const [longer, other] =
      Math.hypot(...mitre.face) > Math.hypot(...mitre.host) ? [mitre.face, mitre.host] : [mitre.host, mitre.face];
    // Seen from the toe, the face's heel lies toward the face where the two stand apart.
    const sense = Math.sign(cross(mitre.hostFrom, mitre.faceFrom)) * (longer === mitre.face ? 1 : -1);
    return (sense * cross(other, longer)) / Math.hypot(...other);
  }

  heels(host: 'stub' | 'end'): number {
    const mitre = this.mitre(host);
    return Math.hypot(...mitre.face) - Math.hypot(...mitre.host);
  }

  /** How far the toes miss each other once the slots in the mitres meet. */
  toes(host: 'stub' | 'end'): number {
    const joint = this.joint(`face / ${host}`);
    const [own, other] = joint.halves as [Half, Half];
    const fromToe = (half: Half): number => {
      const found = this.across(joint, half);
      if (half.from.kind === 'toe') return found;
      return this.thickness(half.part) / Math.cos((joint.mitre?.angle ?? Number.NaN) * DEGREE) - found;
    };
    return fromToe(own) - fromToe(other);
  }
}
