import { Rational } from '../number/rational.js';
import type { Factored } from './factor.js';
import { addForm, addTo, type Form } from './form.js';
import type { AxisNumber, LinearTerm } from './types.js';

/** constant + Σ coefficient · free unknown. */
interface Place {
  constant: Rational;
  readonly form: Form;
}

/** Planes whose distances from each other are known, in the order of ranks. */
export interface RigidBody {
  readonly axis: AxisNumber;
  readonly planes: readonly number[];
  /** A node of it; all others have the same free unknowns. */
  readonly sample: number;
  readonly main: boolean;
}

/** Where everything lies: each node in terms of what is still free, the main body of each axis held at its origin. */
export class Places {
  readonly bodies: readonly RigidBody[];
  /** The node each axis is measured from: the least plane of its main body, or the ground if that belongs to it. */
  readonly origins: readonly (number | undefined)[];
  private readonly shift: Rational[] = [Rational.ZERO, Rational.ZERO, Rational.ZERO];
  /** By root of tree. */
  private readonly places: ReadonlyMap<number, Place>;
  /** Values asked for, by node, `null` for one that is free: every check asks for the same few. */
  private readonly values: (Rational | null | undefined)[];

  constructor(private readonly factored: Factored) {
    const { system } = factored;
    this.places = rootPlaces(factored);
    const bodies: RigidBody[] = [];
    const origins: (number | undefined)[] = [];
    for (const axis of [0, 1, 2] as const) {
      const found = this.bodiesOn(axis);
      const main = this.mainOf(found, axis);
      bodies.push(...found.map((body) => ({ ...body, main: body === main })));
      if (main) this.hold(main.sample);
      const ground = system.grounds[axis];
      const origin = main && (this.isPart(ground, main) ? ground : this.least(main));
      origins.push(origin);
      if (origin !== undefined) this.shift[axis] = this.onAxis(origin).neg();
    }
    this.bodies = bodies;
    this.origins = origins;
    this.values = new Array(system.count);
  }

  /** Value of a node; undefined while it is free. */
  valueOf(node: number): Rational | undefined {
    const known = this.values[node];
    if (known !== undefined) return known ?? undefined;
    const value = this.place(node).form.size > 0 ? null : this.shifted(node);
    this.values[node] = value;
    return value ?? undefined;
  }

  /** Value of a linear form; undefined while anything free is left in it. */
  evaluate(terms: readonly LinearTerm[]): Rational | undefined {
    const free: Form = new Map();
    let value = Rational.ZERO;
    for (const { unknown, coefficient } of terms) {
      addForm(free, this.place(unknown).form, coefficient);
      value = value.add(this.shifted(unknown).mul(coefficient));
    }
    return free.size === 0 ? value : undefined;
  }

  /** high − low at once where one tree holds both. */
  difference(high: number, low: number): Rational | undefined {
    const { root, offset } = this.factored.forest;
    if (root[high] === root[low]) return (offset[high] as Rational).sub(offset[low] as Rational);
    return this.evaluate([
      { unknown: high, coefficient: Rational.ONE },
      { unknown: low, coefficient: Rational.of(-1) },
    ]);
  }

  /** The free unknowns that a node depends on. */
  freedomsOf(node: number): Iterable<number> {
    return this.place(node).form.keys();
  }

  isFree(node: number): boolean {
    return this.place(node).form.size > 0;
  }

  private place(node: number): Place {
    return this.places.get(this.factored.forest.root[node] as number) as Place;
  }

  private onAxis(node: number): Rational {
    return this.place(node).constant.add(this.factored.forest.offset[node] as Rational);
  }

  /** A plane from its axis' origin; a length as it is. */
  private shifted(node: number): Rational {
    const { axis, plane } = this.factored.system;
    const value = this.onAxis(node);
    return plane[node] ? value.add(this.shift[axis[node] as number] as Rational) : value;
  }

  private bodiesOn(axis: AxisNumber): readonly RigidBody[] {
    const { system, forest } = this.factored;
    const ofRoot = new Map<number, { axis: AxisNumber; planes: number[]; sample: number; main: boolean }>();
    const ofForm = new Map<string, { axis: AxisNumber; planes: number[]; sample: number; main: boolean }>();
    for (const node of system.byRank) {
      if (system.axis[node] !== axis || !system.plane[node]) continue;
      const ground = node >= system.count - 3;
      if (ground && system.grounds[axis] === undefined) continue;
      const root = forest.root[node] as number;
      let body = ofRoot.get(root);
      if (!body) {
        const key = this.keyOf(root);
        body = ofForm.get(key) ?? { axis, planes: [], sample: root, main: false };
        ofForm.set(key, body);
        ofRoot.set(root, body);
      }
      if (!ground) body.planes.push(node);
    }
    return [...ofForm.values()].filter((body) => body.planes.length > 0);
  }

  private keyOf(root: number): string {
    const { form } = this.place(root);
    return [...form.keys()]
      .sort((a, b) => a - b)
      .map((node) => `${node}:${form.get(node)}`)
      .join(' ');
  }

  /** The body the ground belongs to, or else the largest one, ties going to the first label. */
  private mainOf(bodies: readonly RigidBody[], axis: AxisNumber): RigidBody | undefined {
    const ground = this.factored.system.grounds[axis];
    let main = bodies.find((body) => this.isPart(ground, body));
    if (main) return main;
    main = bodies[0];
    for (const body of bodies) if (main && body.planes.length > main.planes.length) main = body;
    return main;
  }

  private isPart(node: number | undefined, body: RigidBody): boolean {
    return node !== undefined && this.keyOf(this.factored.forest.root[node] as number) === this.keyOf(body.sample);
  }

  /** Lets a free unknown that moves this node take the value that holds the node still. */
  private hold(node: number): void {
    const { constant, form } = this.place(node);
    const { plane } = this.factored.system;
    const held = [...form.keys()].find((free) => plane[free]);
    const weight = held === undefined ? undefined : form.get(held);
    if (held === undefined || !weight) return;
    const fixed = new Map(form);
    for (const place of this.places.values()) {
      const k = place.form.get(held)?.div(weight);
      if (!k) continue;
      addForm(place.form, fixed, k.neg());
      place.constant = place.constant.sub(constant.mul(k));
    }
  }

  private least(body: RigidBody): number | undefined {
    const [first, ...others] = body.planes;
    if (first === undefined) return undefined;
    let least = { node: first, at: this.onAxis(first) };
    for (const node of others) {
      const at = this.onAxis(node);
      if (at.lt(least.at)) least = { node, at };
    }
    return least.node;
  }
}

/** Each root and length in terms of those that the elimination left free. */
function rootPlaces({ system, forest, elimination }: Factored): Map<number, Place> {
  const places = new Map<number, Place>();
  for (let node = 0; node < system.count; node++) {
    if (forest.root[node] === node)
      places.set(node, { constant: Rational.ZERO, form: new Map([[node, Rational.ONE]]) });
  }
  // A row's other unknowns are free or pivots of later rows.
  for (let i = elimination.rows.length - 1; i >= 0; i--) {
    const row = elimination.rows[i];
    if (!row) continue;
    const form: Form = new Map();
    let constant = row.value;
    for (const [node, coefficient] of row.rest) {
      const other = places.get(node) as Place;
      for (const [free, k] of other.form) addTo(form, free, k.mul(coefficient).neg());
      constant = constant.sub(other.constant.mul(coefficient));
    }
    places.set(row.pivot, { constant, form });
  }
  return places;
}
