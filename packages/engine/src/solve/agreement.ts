import { Rational } from '../number/rational.js';
import { Elimination } from './eliminate.js';
import type { Edge, General, Normal } from './normalise.js';

interface Stated {
  readonly edges: Edge[];
  readonly generals: General[];
  impossible: boolean;
}

/**
 * Answers, many times over for one system, whether some of its statements agree: whether any values satisfy all
 * their equations. Planes tied by edges are kept in sets with their offset from the set's leader (union-find),
 * which takes no reasons along and so is quicker than a forest.
 */
export class Agreement {
  private readonly stated = new Map<string, Stated>();
  private readonly leader: Int32Array;
  private readonly offset: Rational[];
  private readonly size: Int32Array;

  constructor(private readonly system: Normal) {
    this.leader = new Int32Array(system.count);
    this.offset = new Array<Rational>(system.count).fill(Rational.ZERO);
    this.size = new Int32Array(system.count);
    for (const edge of system.edges) this.of(edge.statement).edges.push(edge);
    for (const general of system.generals) this.of(general.statement).generals.push(general);
    for (const { statement, value } of system.empties) if (!value.isZero()) this.of(statement).impossible = true;
  }

  agree(statements: readonly string[]): boolean {
    for (let node = 0; node < this.leader.length; node++) this.leader[node] = node;
    this.offset.fill(Rational.ZERO);
    const generals: General[] = [];
    for (const statement of statements) {
      const stated = this.stated.get(statement);
      if (!stated) continue;
      if (stated.impossible) return false;
      for (const edge of stated.edges) if (!this.tie(edge)) return false;
      generals.push(...stated.generals);
    }
    if (generals.length === 0) return true;
    for (const { terms } of generals) for (const { unknown } of terms) this.find(unknown);
    const sets = { root: this.leader, offset: this.offset, size: this.size };
    return new Elimination({ ...this.system, generals }, sets).bad.length === 0;
  }

  /** Ties two planes together; false if they are tied already, with another offset. */
  private tie({ high, low, offset }: Edge): boolean {
    const [a, b] = [this.find(high), this.find(low)];
    const between = (this.offset[low] as Rational).add(offset).sub(this.offset[high] as Rational);
    if (a === b) return between.isZero();
    this.leader[a] = b;
    this.offset[a] = between;
    return true;
  }

  /** The leader of a plane's set; the plane then hangs from it directly. */
  private find(node: number): number {
    const path: number[] = [];
    let at = node;
    for (let next = this.leader[at] as number; next !== at; next = this.leader[at] as number) {
      path.push(at);
      at = next;
    }
    let sum = Rational.ZERO;
    for (const step of path.reverse()) {
      sum = sum.add(this.offset[step] as Rational);
      this.leader[step] = at;
      this.offset[step] = sum;
    }
    return at;
  }

  private of(statement: string): Stated {
    const known = this.stated.get(statement);
    if (known) return known;
    const stated = { edges: [], generals: [], impossible: false };
    this.stated.set(statement, stated);
    return stated;
  }
}
