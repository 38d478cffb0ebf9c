import { cross, type Vector } from '../geometry/vector.js';
import type { Assembly, Item, Pair } from './assembly.js';
import { largest } from './simplex.js';
import { touching } from './touching.js';

/** Moves that differ by less than this are alike. */
export const ALIKE = 1e-6;

const UNIT: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * How fast each member goes when all move at once, such that bonds and slopes open as far as they can, each by one
 * length of its way at most, and nothing that touches is pressed together; undefined when nothing opens.
 * @param closed joints that are to stay closed
 */
export function opening(
  { items, bonds, slopes, links }: Assembly,
  members: readonly number[],
  closed: ReadonlySet<string>,
): readonly Vector[] | undefined {
  const program = new Program(members);
  for (const bond of bonds) {
    if (closed.has(bond.joint)) program.atMost(bond, bond.way, 0);
    program.opens(bond, bond.way);
    for (const across of squareTo(bond.way)) program.still(bond, across);
  }
  for (const slope of slopes) program.opens(slope, slope.normal);
  const sloped = new Set(slopes.flatMap(({ entering, host }) => [`${entering} ${host}`, `${host} ${entering}`]));
  for (const { a, b, way } of touching(members.map((member) => items[member] as Item))) {
    const [entering, host] = [members[a] as number, members[b] as number];
    if (!sloped.has(`${entering} ${host}`)) program.atLeastNothing({ entering, host }, way);
  }
  // Nothing runs away: joined parts go apart by no more than a few of the lengths that bonds open by.
  for (const link of links) {
    for (const way of UNIT) {
      program.atMost(link, way, 4);
      program.atMost({ entering: link.host, host: link.entering }, way, 4);
    }
  }
  return program.solve();
}

/** A linear program over the speeds of the members, line by line. Lines about others than members are left out. */
class Program {
  private readonly rows: number[][] = [];
  private readonly limits: number[] = [];
  private readonly gain: number[];
  private readonly place: ReadonlyMap<number, number>;

  constructor(members: readonly number[]) {
    this.place = new Map(members.map((member, i) => [member, i]));
    this.gain = new Array<number>(3 * members.length).fill(0);
  }

  /** The entering member goes along `way`, against the host, no faster than `limit`. */
  atMost(pair: Pair, way: Vector, limit: number): void {
    const line = this.line(pair, way, 1);
    if (line) this.push(line, limit);
  }

  atLeastNothing(pair: Pair, way: Vector): void {
    const line = this.line(pair, way, -1);
    if (line) this.push(line, 0);
  }

  still(pair: Pair, way: Vector): void {
    this.atMost(pair, way, 0);
    this.atLeastNothing(pair, way);
  }

  /** To be opened, the farther the better. */
  opens(pair: Pair, way: Vector): void {
    const line = this.line(pair, way, 1);
    if (!line) return;
    this.atLeastNothing(pair, way);
    this.push(line, 1);
    line.forEach((k, j) => {
      this.gain[j] = (this.gain[j] as number) + k;
    });
  }

  solve(): readonly Vector[] | undefined {
    const found = largest(this.gain, this.rows, this.limits);
    if (!found || found.reduce((sum, v, j) => sum + v * (this.gain[j] as number), 0) < ALIKE) return undefined;
    const at = (i: number): number => found[i] as number;
    return [...this.place.values()].map((i): Vector => [at(3 * i), at(3 * i + 1), at(3 * i + 2)]);
  }

  private push(line: readonly number[], limit: number): void {
    this.rows.push([...line]);
    this.limits.push(limit);
  }

  private line({ entering, host }: Pair, way: Vector, times: 1 | -1): readonly number[] | undefined {
    const [a, b] = [this.place.get(entering), this.place.get(host)];
    if (a === undefined || b === undefined) return undefined;
    const line = new Array<number>(this.gain.length).fill(0);
    for (const i of [0, 1, 2] as const) {
      line[3 * a + i] = times * way[i];
      line[3 * b + i] = -times * way[i];
    }
    return line;
  }
}

/** Two ways across a way, square to it. */
function squareTo(way: Vector): readonly Vector[] {
  const beside = UNIT.find((unit) => cross(way, unit).filter(Boolean).length === 1) ?? (UNIT[0] as Vector);
  const first = cross(way, beside);
  return [first, cross(way, first)];
}
