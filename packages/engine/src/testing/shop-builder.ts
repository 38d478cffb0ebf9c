import type { Connector, Jig, Layout, Limits, Machine, Material, Shop, Tolerances } from '../spec/stock.js';
import { mm, toleranced } from './written.js';

type Numeral = number | string;
const source = { uri: 'test:shop.joinery', start: 0, end: 1 };

/** A sheet 2440 x 1220 with its grain along the length, unless said otherwise. */
export function material(
  name: string,
  thickness: Numeral,
  more: { measured?: Numeral } & Partial<Omit<Material, 'measured'>> = {},
): Material {
  const { measured, ...rest } = more;
  return {
    name,
    source,
    thickness: toleranced(thickness),
    measured: measured === undefined ? undefined : toleranced(measured),
    sheet: { length: mm(2440), width: mm(1220) },
    grain: 'length',
    ...rest,
  };
}

export function machine(
  name: string,
  kind: Machine['kind'],
  figures: { diameter: Numeral; kerf?: Numeral; base: Numeral; to?: Numeral; tolerance?: Numeral; body?: Numeral },
): Machine {
  const tolerance = figures.tolerance === undefined ? undefined : mm(figures.tolerance);
  return {
    name,
    source,
    kind,
    diameter: mm(figures.diameter),
    kerf: mm(figures.kerf ?? figures.diameter),
    base: { least: mm(figures.base), most: mm(figures.to ?? figures.base), plus: tolerance, minus: tolerance },
    body: figures.body === undefined ? undefined : mm(figures.body),
  };
}

export function connector(
  name: string,
  shape: Connector['shape'],
  figures: {
    along: Numeral;
    across: Numeral;
    thickness: Numeral;
    face: Numeral;
    edge?: Numeral;
    slot?: Numeral;
    clearance?: Numeral;
    machine: string;
  },
): Connector {
  const maybe = (numeral: Numeral | undefined) => (numeral === undefined ? undefined : mm(numeral));
  return {
    name,
    source,
    shape,
    along: mm(figures.along),
    across: mm(figures.across),
    thickness: mm(figures.thickness),
    slot: maybe(figures.slot),
    plunge: { face: mm(figures.face), edge: mm(figures.edge ?? figures.face) },
    clearance: maybe(figures.clearance),
    machine: figures.machine,
  };
}

export const lines = (...at: readonly Numeral[]): Layout => ({ kind: 'lines', lines: at.map(mm) });

export function jig(
  more: Partial<Omit<Jig, 'spacers' | 'within'>> & { spacers?: readonly Numeral[]; within?: Numeral } = {},
): Jig {
  const { spacers = [6, 10, 12, 19, 25], within = '0.2', ...rest } = more;
  return {
    name: 'longbed',
    source,
    bed: mm(900),
    fences: ['left', 'right'],
    stop: { least: mm(0), most: mm(760), step: mm('0.5') },
    ...rest,
    spacers: spacers.map(mm),
    within: mm(within),
  };
}

/** The shop of Lindwell's joiners: two sheets, a disc joiner and a mortiser, three patterns, one jig. */
export function shop(
  more: {
    materials?: readonly Material[];
    machines?: readonly Machine[];
    connectors?: readonly Connector[];
    patterns?: Readonly<Record<string, Layout>>;
    bands?: Readonly<Record<string, Numeral>>;
    jig?: Jig | null;
    tolerances?: Tolerances;
    limits?: Partial<Record<keyof Omit<Limits, 'source' | 'written'>, Numeral>>;
  } = {},
): Shop {
  const named = <T extends { readonly name: string }>(items: readonly T[]) =>
    new Map(items.map((item): [string, T] => [item.name, item]));
  const materials = [
    material('birch18', 18, { measured: '17.7 ± 0.2' }),
    material('ply6', 6, { measured: '5.8 ± 0.1' }),
    ...(more.materials ?? []),
  ];
  const machines = [
    machine('joiner', 'disc', { diameter: 100, kerf: 4, base: '9.5', tolerance: '0.1', body: 140 }),
    machine('mortiser', 'mortiser', { diameter: 8, base: 5, to: 30, tolerance: '0.1', body: 50 }),
    ...(more.machines ?? []),
  ];
  const connectors = [
    connector('biscuit20', 'biscuit', { along: 56, across: 23, thickness: 4, face: '12.3', machine: 'joiner' }),
    connector('tenon8', 'loose tenon', {
      along: 22,
      across: 40,
      thickness: 8,
      slot: 23,
      face: 14,
      edge: 28,
      machine: 'mortiser',
    }),
    ...(more.connectors ?? []),
  ];
  const patterns = { deep5: lines(70, 180, 270, 420, 500), ...more.patterns };
  const limit = {
    slotToEdge: 10,
    wall: 4,
    skin: 3,
    step: '0.3',
    alike: '0.5',
    gap: '0.5',
    movement: 1,
    ...more.limits,
  };
  return {
    materials: named(materials),
    machines: named(machines),
    connectors: named(connectors),
    patterns: named(Object.entries(patterns).map(([name, layout]) => ({ name, source, layout }))),
    bands: named(
      Object.entries({ edge1: 1, ...more.bands }).map(([name, t]) => ({ name, source, thickness: toleranced(t) })),
    ),
    jig: more.jig === null ? undefined : (more.jig ?? jig()),
    pose: { edge: 'down', face: 'up' },
    tolerances: more.tolerances,
    limits: {
      slotToEdge: mm(limit.slotToEdge),
      wall: mm(limit.wall),
      skin: mm(limit.skin),
      step: mm(limit.step),
      alike: mm(limit.alike),
      sag: mm(limit.sag ?? '1/144'),
      sagInTime: limit.sagInTime === undefined ? undefined : mm(limit.sagInTime),
      sagAtMost: limit.sagAtMost === undefined ? undefined : mm(limit.sagAtMost),
      gap: mm(limit.gap),
      movement: mm(limit.movement),
      written: ['slotToEdge', 'wall', 'skin', 'step', 'alike'],
    },
  };
}
