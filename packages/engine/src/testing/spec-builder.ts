import type { Input } from '../spec/input.js';
import type { Attitude, Dimension, Side } from '../spec/sides.js';
import type {
  Connect,
  DimensionStatement,
  End,
  JointStatement,
  PartSpec,
  Silence,
  Spec,
  Statement,
  Verb,
  Written,
} from '../spec/spec.js';
import type { Layout, Shop } from '../spec/stock.js';
import { by, type Draft, type FactMaker, type Item } from './joint-items.js';
import { shop as defaultShop } from './shop-builder.js';
import { type Length, Places } from './written.js';

type Legs = { readonly [D in Dimension]?: Length };

const names = (list: string): readonly string[] => list.split(',').map((name) => name.trim());

/** Builds a Spec in a test, line by line as a cabinet is written; see the functions of joint-items.ts for braces. */
export class SpecBuilder {
  private readonly places = new Places();
  private readonly parts: PartSpec[] = [];
  private readonly statements: Statement[] = [];
  private readonly silences: Silence[] = [];
  private readonly inputs: Input[] = [];
  private readonly taken = new Map<string, number>();
  private general: Connect | undefined;
  private datumSide: Side | undefined;
  private milledWhen: 'before banding' | 'after banding' | undefined;
  private thickness: 'nominal' | 'measured' = 'measured';

  constructor(
    private readonly shop: Shop = defaultShop(),
    private readonly name = 'Rack',
  ) {}

  /** `part lh, rh : upright of birch18`. */
  part(list: string, attitude: Attitude, material = 'birch18', grain?: Dimension): this {
    for (const id of names(list))
      this.parts.push({ id, kind: id, attitude, material, grain, source: this.places.source() });
    return this;
  }

  /** `part front : facing of birch18 on base.cant`. */
  on(level: string, list: string, attitude: Attitude = 'facing', material = 'birch18'): this {
    const on = { part: level, source: this.places.source() };
    for (const id of names(list))
      this.parts.push({ id, kind: id, attitude, material, on, source: this.places.source() });
    return this;
  }

  /** `parts shelf 1 to 3 : level of birch18`. */
  likeParts(kind: string, count: number, attitude: Attitude, material = 'birch18'): this {
    const source = this.places.source();
    for (let index = 1; index <= count; index++)
      this.parts.push({ id: `${kind} ${index}`, kind, index, attitude, material, source });
    return this;
  }

  over(dimension: Dimension, length: Length, low: string, high: string): this {
    return this.dimension(dimension, length, { kind: 'over', low, high }, `over ${low} and ${high}`);
  }

  between(dimension: Dimension, length: Length, low: string, high: string): this {
    return this.dimension(dimension, length, { kind: 'between', low, high }, `between ${low} and ${high}`);
  }

  of(dimension: Dimension, length: Length, list: string): this {
    return this.dimension(dimension, length, { kind: 'of', parts: names(list) }, `of ${list}`);
  }

  from(dimension: Dimension, length: Length, from: string, to: string): this {
    const form = { kind: 'from', from: this.places.plane(from), to: this.places.plane(to) } as const;
    return this.dimension(dimension, length, form, `from ${from} to ${to}`);
  }

  /** `butt shelf between lh and rh { … }`; a host may name its side: `stileL.right`. */
  joint(verb: Verb, entering: string, hosts: string, ...items: readonly Item[]): this {
    const where = hosts.startsWith('to ') ? 'to' : 'between';
    const list = names(hosts.replace(/^(to|between) /, ''));
    const end = (text: string): End => {
      const [part = '', side] = text.split('.');
      return { part, side: side as Side | undefined, source: this.places.source() };
    };
    const draft: Draft = {
      kind: 'joint',
      ...this.base(`${verb} ${entering} ${where} ${list.join(', ')}`),
      verb,
      entering: names(entering).flatMap((name) => this.alike(name)),
      enteringSource: this.places.source(),
      between:
        where === 'to'
          ? []
          : list.map((pair) => pair.split(' and ')).map(([a = '', b = '']) => ({ low: end(a), high: end(b) })),
      to: where === 'to' ? list.map((plane) => this.places.plane(plane)) : [],
      facts: [],
      leaveOut: [],
    };
    for (const item of items) item(draft, this.places);
    this.statements.push(draft satisfies JointStatement);
    return this;
  }

  /** `shelf.bottom 350 above base.bottom`, outside any joint. */
  place(list: string, make: FactMaker): this {
    const made = make(this.places);
    const parts = names(list).flatMap((name) => this.alike(name));
    this.statements.push({ kind: 'placing', ...this.base(`placing ${list} ${made.kind}`), parts, fact: made });
    return this;
  }

  notch(list: string, corner: readonly [Side, Side], legs: Legs): this {
    const base = this.base(`notch ${list}`);
    this.statements.push({ kind: 'notch', ...base, parts: names(list), corner, legs: this.legs(legs) });
    return this;
  }

  cant(list: string, corner: readonly [Side, Side], legs: Legs): this {
    const base = this.base(`cant ${list}`);
    this.statements.push({ kind: 'cant', ...base, parts: names(list), corner, legs: this.legs(legs) });
    return this;
  }

  band(sides: readonly Side[], list: string, band = 'edge1'): this {
    const parts = names(list).flatMap((name) => this.alike(name));
    this.statements.push({ kind: 'band', ...this.base(`band ${sides.join(', ')} of ${list}`), sides, parts, band });
    return this;
  }

  connect(connector: string, pattern: string | Layout): this {
    this.general = by(connector, pattern, this.places);
    return this;
  }

  datum(side: Side): this {
    this.datumSide = side;
    return this;
  }

  milled(when: 'before banding' | 'after banding'): this {
    this.milledWhen = when;
    return this;
  }

  nominal(): this {
    this.thickness = 'nominal';
    return this;
  }

  input(input: Input): this {
    this.inputs.push(input);
    return this;
  }

  allow(check: string, reason: string): this {
    this.silences.push({ check, reason, source: this.places.source() });
    return this;
  }

  build(): Spec {
    const milledSource = this.milledWhen === undefined ? undefined : this.places.source();
    return {
      name: this.name,
      source: this.places.source(),
      nameSource: this.places.source(),
      parameters: [],
      inputs: this.inputs,
      parts: this.parts,
      statements: this.statements,
      connect: this.general,
      datum: this.datumSide === undefined ? undefined : { side: this.datumSide, source: this.places.source() },
      milled: { when: this.milledWhen ?? 'after banding', source: milledSource },
      silences: this.silences,
      shop: this.shop,
      thickness: this.thickness,
    };
  }

  private legs(legs: Legs): { dimension: Dimension; length: Written }[] {
    return Object.entries(legs).map(([dimension, length]) => ({
      dimension: dimension as Dimension,
      length: this.places.length(length),
    }));
  }

  private dimension(dimension: Dimension, length: Length, form: DimensionStatement['form'], words: string): this {
    const written = this.places.length(length);
    this.statements.push({
      kind: 'dimension',
      ...this.base(`${dimension} ${words}`),
      dimension,
      length: written,
      form,
    });
    return this;
  }

  /** All like parts of a name, or the one part that has it. */
  private alike(name: string): readonly string[] {
    const found = this.parts.filter((part) => part.kind === name || part.id === name);
    return found.length > 0 ? found.map((part) => part.id) : [name];
  }

  private base(words: string): { id: string; source: Statement['source']; silences: Silence[] } {
    const nth = (this.taken.get(words) ?? 0) + 1;
    this.taken.set(words, nth);
    return { id: nth === 1 ? words : `${words} (${nth})`, source: this.places.source(), silences: [] };
  }
}

/** A cabinet to be written line by line. */
export const cabinet = (shop?: Shop): SpecBuilder => new SpecBuilder(shop);

/** Two sides 560 deep and 720 high, standing 600 over all: enough to hang things between. */
export const sides = (shop?: Shop): SpecBuilder =>
  cabinet(shop)
    .part('lh, rh', 'upright')
    .over('width', 600, 'lh', 'rh')
    .of('height', 720, 'lh, rh')
    .of('depth', 560, 'lh, rh')
    .place('rh', (places) => ({
      kind: 'flush with',
      side: 'bottom',
      plane: places.plane('lh', 'bottom'),
      source: places.source(),
    }))
    .place('rh', (places) => ({
      kind: 'flush with',
      side: 'rear',
      plane: places.plane('lh', 'rear'),
      source: places.source(),
    }));
