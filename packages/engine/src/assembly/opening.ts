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
    if (closed.has(bond.joint)) program.still(bond, bond.way);
    else program.opens(bond, bond.way);
    for (const across of squareTo(bond.way)) program.still(bond, across);
  }
  for (const slope of slopes) program.opens(slope, slope.normal);
  const sloped = new Set(slopes.flatMap(({ entering, host }) => [`${entering} ${host}`, `${host} ${entering}`]));
  for (const { a, b, way } of touching(members.map((member) => items[member] as Item))) {
    const [entering, host] = [members[a] as number, members[b] as number];
    if (!sloped.has(`${entering} ${host}`)) program.atLeastNothing({ entering, host }, way);
  }
  // Nothing runs away: where no bond says how far, joined parts go apart by no more than a few of the lengths of others.
  const bound = new Set([...bonds, ...slopes].map(({ entering, host }) => `${entering} ${host}`));
  for (const link of links) {
    if (bound.has(`${link.entering} ${link.host}`)) continue;
    for (const way of UNIT) {
      program.atMost(link, way, 4);
      program.atMost({ entering: link.host, host: link.entering }, way, 4);
    }
  }
  return program.solve();
}

/** Two members, by their places among the members, and the way the first goes against the second. */
interface Relative {
  readonly a: number;
  readonly b: number;
  readonly way: Vector;
}

/**
 * A linear program over the speeds of the members, rule by rule. Rules about others than members are left out. Speeds
 * along an axis that have to be alike are one unknown, which most of them are.
 */
class Program {
  private readonly place: ReadonlyMap<number, number>;
  /** For each speed of each member along an axis another that is the same, or itself. */
  private readonly same: number[];
  private readonly least: Relative[] = [];
  private readonly most: (Relative & { readonly limit: number })[] = [];
  private readonly wanted: Relative[] = [];

  constructor(members: readonly number[]) {
    this.place = new Map(members.map((member, i) => [member, i]));
    this.same = members.flatMap((_, i) => [3 * i, 3 * i + 1, 3 * i + 2]);
  }

  /** The entering member goes along `way`, against the host, no faster than `limit`. */
  atMost(pair: Pair, way: Vector, limit: number): void {
    const rule = this.between(pair, way);
    if (rule) this.most.push({ ...rule, limit });
  }

  atLeastNothing(pair: Pair, way: Vector): void {
    const rule = this.between(pair, way);
    if (rule) this.least.push(rule);
  }

  still(pair: Pair, way: Vector): void {
    const rule = this.between(pair, way);
    if (!rule) return;
    const axes = ([0, 1, 2] as const).filter((i) => way[i] !== 0);
    const [axis] = axes;
    if (axes.length === 1 && axis !== undefined)
      this.same[this.rootOf(3 * rule.a + axis)] = this.rootOf(3 * rule.b + axis);
    else {
      this.least.push(rule);
      this.most.push({ ...rule, limit: 0 });
    }
  }

  /** To be opened, the farther the better. */
  opens(pair: Pair, way: Vector): void {
    const rule = this.between(pair, way);
    if (!rule) return;
    this.least.push(rule);
    this.most.push({ ...rule, limit: 1 });
    this.wanted.push(rule);
  }

  solve(): readonly Vector[] | undefined {
    const columns = new Map<number, number>();
    for (const i of this.same.keys()) {
      const root = this.rootOf(i);
      if (!columns.has(root)) columns.set(root, columns.size);
    }
    const column = (i: number): number => columns.get(this.rootOf(i)) as number;
    const gain = new Array<number>(columns.size).fill(0);
    for (const rule of this.wanted)
      this.line(rule, 1, column, columns.size).forEach((k, j) => {
        gain[j] = (gain[j] as number) + k;
      });
    const limits = new Map<string, { readonly line: readonly number[]; readonly limit: number }>();
    const hold = (line: readonly number[], limit: number): void => {
      if (line.every((k) => k === 0)) return;
      const key = String(line);
      if (limit < (limits.get(key)?.limit ?? Number.POSITIVE_INFINITY)) limits.set(key, { line, limit });
    };
    for (const rule of this.least) hold(this.line(rule, -1, column, columns.size), 0);
    for (const rule of this.most) hold(this.line(rule, 1, column, columns.size), rule.limit);
    const rules = [...limits.values()];
    const found = largest(
      gain,
      rules.map(({ line }) => line),
      rules.map(({ limit }) => limit),
    );
    if (!found || found.reduce((sum, v, j) => sum + v * (gain[j] as number), 0) < ALIKE) return undefined;
    const at = (i: number): number => found[column(i)] as number;
    return [...this.place.values()].map((i): Vector => [at(3 * i), at(3 * i + 1), at(3 * i + 2)]);
  }

  private between({ entering, host }: Pair, way: Vector): Relative | undefined {
    const [a, b] = [this.place.get(entering), this.place.get(host)];
    return a === undefined || b === undefined ? undefined : { a, b, way };
  }

  private rootOf(i: number): number {
    let at = i;
    for (let above = this.same[at]; above !== undefined && above !== at; above = this.same[at]) at = above;
    this.same[i] = at;
    return at;
  }

  private line({ a, b, way }: Relative, times: 1 | -1, column: (i: number) => number, size: number): readonly number[] {
    const line = new Array<number>(size).fill(0);
    for (const i of [0, 1, 2] as const) {
      if (way[i] === 0) continue;
      const [own, other] = [column(3 * a + i), column(3 * b + i)];
      line[own] = (line[own] as number) + times * way[i];
      line[other] = (line[other] as number) - times * way[i];
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
