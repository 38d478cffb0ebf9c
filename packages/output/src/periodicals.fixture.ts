import {
  type Axis,
  type Box,
  type Connector,
  type Cut,
  type Fit,
  type FitResult,
  type FittedJoint,
  type FittedPart,
  type Half,
  type Jig,
  type Machine,
  type ParameterValue,
  Rational,
  type Reason,
  type Shop,
  type Side,
  type Spacer,
} from '@dryfit/engine';
import { mm, source } from './text.fixture.js';

export { locate, mm, source, TEXT } from './text.fixture.js';

/** A cabinet written out by hand, with sizes and slots worked on paper: two sides, top, base, a set-back shelf, a back. */

export const biscuit: Connector = {
  name: 'biscuit20',
  source: source(),
  shape: 'biscuit',
  along: mm(56),
  across: mm(23),
  thickness: mm(4),
  plunge: { face: mm('12.3'), edge: mm('12.3') },
  machine: 'joiner',
};

export const joiner: Machine = {
  name: 'joiner',
  source: source(),
  kind: 'disc',
  diameter: mm(100),
  kerf: mm(4),
  base: { least: mm('9.5'), most: mm('9.5') },
};

type Six = readonly [
  x0: string | number,
  x1: string | number,
  y0: string | number,
  y1: string | number,
  z0: string | number,
  z1: string | number,
];

export function boxOf([x0, x1, y0, y1, z0, z1]: Six): Box {
  return { lo: { x: mm(x0), y: mm(y0), z: mm(z0) }, hi: { x: mm(x1), y: mm(y1), z: mm(z1) } };
}

const GRAIN = { upright: 'z', facing: 'z', level: 'x' } as const;

export function part(
  id: string,
  attitude: FittedPart['attitude'],
  six: Six | undefined,
  more: Partial<FittedPart> = {},
): FittedPart {
  const [kind = id, index] = id.split(' ');
  const box = six && boxOf(six);
  const extent = (axis: Axis) => box?.hi[axis].sub(box.lo[axis]);
  const grain = GRAIN[attitude];
  const across = attitude === 'level' ? 'y' : attitude === 'upright' ? 'y' : 'x';
  const thick = attitude === 'level' ? 'z' : attitude === 'upright' ? 'x' : 'y';
  const [length, width, thickness] = [extent(grain), extent(across), extent(thick)];
  return {
    id,
    kind,
    index: index === undefined ? undefined : Number(index),
    attitude,
    material: 'birch18',
    source: source('part lh'),
    box,
    extent: { x: extent('x'), y: extent('y'), z: extent('z') },
    grain,
    cutSize: length && width && thickness ? { length, width, thickness } : undefined,
    bands: [],
    cuts: [],
    same: 0,
    ...more,
  };
}

export function spacer(
  width: string | number,
  stack: readonly (string | number)[] = [],
  kind?: Spacer['kind'],
): Spacer {
  const pieces = stack.map(mm);
  return {
    width: mm(width),
    tolerance: { plus: Rational.ZERO, minus: Rational.ZERO },
    kind: kind ?? (mm(width).isZero() ? 'none' : 'stock'),
    stack: pieces,
    off: pieces.length === 0 ? Rational.ZERO : Rational.sum(pieces).sub(mm(width)),
  };
}

interface HalfFigures {
  readonly part: string;
  readonly joint: string;
  readonly surface: Side;
  readonly hand: 'left' | 'right';
  readonly marks: readonly (string | number)[];
  readonly from: Half['from'];
  readonly across: string | number;
  readonly spacer?: Spacer;
  readonly role?: Half['role'];
  readonly more?: Partial<Half>;
}

export function half(figures: HalfFigures): Half {
  const made = figures.spacer ?? spacer(0);
  return {
    part: figures.part,
    surface: figures.surface,
    role: figures.role ?? (figures.from.kind === 'end' ? 'face' : 'edge'),
    datum: 'rear',
    setback: made.width,
    spacer: made,
    from: figures.from,
    across: mm(figures.across),
    hand: figures.hand,
    depth: mm('12.3'),
    slots: figures.marks.map((mark, i) => ({
      id: `${figures.joint} ${figures.part} ${i + 1}`,
      part: figures.part,
      joint: figures.joint,
      number: i + 1,
      fromZero: mm(mark),
      fromDatum: mm(mark).sub(made.width),
      fromReference: mm(figures.across),
      centre: { x: Rational.ZERO, y: mm(560).sub(mm(mark)), z: Rational.ZERO },
      length: { value: 65.6874, error: 1e-4 },
    })),
    ...figures.more,
  };
}

export function joint(
  entering: string,
  host: string,
  halves: readonly Half[],
  more: Partial<FittedJoint> = {},
): FittedJoint {
  return {
    id: `${entering} / ${host}`,
    statement: `butt ${entering} between lh and rh`,
    source: source('butt shelf between lh and rh'),
    verb: 'butt',
    entering,
    host,
    enteringSide: host === 'lh' ? 'left' : 'right',
    hostSide: host === 'lh' ? 'right' : 'left',
    axis: 'x',
    meeting: 'edge to face',
    run: 'y',
    contact: { lo: mm(0), hi: mm(560) },
    connector: biscuit,
    machine: joiner,
    pattern: 'deep5',
    datum: 'rear',
    zero: mm(560),
    trouble: [],
    lines: (halves[0]?.slots ?? []).map((slot) => ({ fromZero: slot.fromZero, use: 'used' as const })),
    halves,
    ...more,
  };
}

const MARKS = [70, 180, 270, 420, 500];

/** Both halves of a level part's joint with one side; `z` is the side of the level part that is its reference. */
function levelJoint(entering: string, host: 'lh' | 'rh', z: 'top' | 'bottom', stop: number): FittedJoint {
  const id = `${entering} / ${host}`;
  const hand = (host === 'lh') === (z === 'top') ? 'right' : 'left';
  const shelf = entering === 'shelf' ? spacer(22, [12, 10]) : spacer(0);
  return joint(entering, host, [
    half({
      part: entering,
      joint: id,
      surface: host === 'lh' ? 'left' : 'right',
      hand,
      marks: MARKS,
      from: { kind: 'face', side: z },
      across: '9.5',
      spacer: shelf,
    }),
    half({
      part: host,
      joint: id,
      surface: host === 'lh' ? 'right' : 'left',
      hand,
      marks: MARKS,
      from: { kind: 'end', side: z },
      across: mm(stop).add(mm('9.5')).toNumber(),
      more: { stop: { end: z, at: mm(stop) } },
    }),
  ]);
}

function groove(surface: Side, six: Six): Cut {
  const run: Axis = surface === 'left' || surface === 'right' ? 'z' : 'x';
  return { kind: 'groove', box: boxOf(six), surface, run, source: source() };
}

/** Six parts; sides mirror each other, top and base are one piece turned over. */
export const PARTS: readonly FittedPart[] = [
  part('lh', 'upright', [0, '17.7', 0, 560, 0, 720], {
    same: 0,
    cuts: [groove('right', ['9.7', '17.7', 538, 544, '9.7', '710.3'])],
  }),
  part('rh', 'upright', ['582.3', 600, 0, 560, 0, 720], {
    same: 1,
    cuts: [groove('left', ['582.3', '590.3', 538, 544, '9.7', '710.3'])],
  }),
  part('top', 'level', ['17.7', '582.3', 0, 560, '702.3', 720], {
    same: 2,
    cuts: [groove('bottom', ['17.7', '582.3', 538, 544, '702.3', '710.3'])],
  }),
  part('base', 'level', ['17.7', '582.3', 0, 560, 0, '17.7'], {
    same: 2,
    cuts: [groove('top', ['17.7', '582.3', 538, 544, '9.7', '17.7'])],
  }),
  part('shelf', 'level', ['17.7', '582.3', 0, 538, 350, '367.7'], { same: 3 }),
  part('back', 'facing', ['10.2', '589.8', '538.2', 544, '10.2', '709.8'], { same: 4, material: 'ply6' }),
];

export const JOINTS: readonly FittedJoint[] = [
  levelJoint('top', 'lh', 'top', 0),
  levelJoint('top', 'rh', 'top', 0),
  levelJoint('base', 'lh', 'bottom', 0),
  levelJoint('base', 'rh', 'bottom', 0),
  levelJoint('shelf', 'lh', 'bottom', 350),
  levelJoint('shelf', 'rh', 'bottom', 350),
];

export const jig: Jig = {
  name: 'longbed',
  source: source(),
  bed: mm(900),
  fences: ['left', 'right'],
  stop: { least: mm(0), most: mm(760), step: mm('0.5') },
  spacers: [mm(6), mm(10), mm(12), mm(19), mm(25)],
  within: mm('0.2'),
};

export const shop: Shop = {
  materials: new Map(),
  bands: new Map(),
  machines: new Map([['joiner', joiner]]),
  connectors: new Map([['biscuit20', biscuit]]),
  patterns: new Map(),
  jig,
  pose: { edge: 'down', face: 'up' },
  limits: {
    slotToEdge: mm(10),
    wall: mm(4),
    skin: mm(3),
    step: mm('0.3'),
    alike: mm('0.5'),
    gap: mm('0.5'),
    sag: mm('1/144'),
    movement: mm(1),
    written: [],
  },
};

export function parameter(name: string, value: number, overridden = false, count = false): ParameterValue {
  return { name, value: mm(value), count, overridden, source: source() };
}

const WIDTH_REASONS: readonly Reason[] = [
  { statement: 'width wide over lh and rh', source: source('butt'), text: 'width 600 over lh and rh', adds: mm(600) },
  { statement: 'part lh', source: source('part'), text: 'lh is 17.7 thick (birch18, measured)', adds: mm('-17.7') },
  { statement: 'part rh', source: source('part'), text: 'rh is 17.7 thick (birch18, measured)', adds: mm('-17.7') },
  {
    statement: 'butt shelf between lh and rh',
    source: source('butt'),
    text: 'shelf stands between lh and rh',
    adds: Rational.ZERO,
  },
];

/** A result around a fit; everything not given is Periodicals. */
export function result(fit: Partial<Fit> = {}, more: Partial<FitResult> = {}): FitResult {
  const whole: Fit = {
    name: 'Periodicals',
    source: source(),
    parameters: [parameter('wide', 600), parameter('deep', 560)],
    thickness: 'measured',
    milled: 'after banding',
    outside: { x: mm(600), y: mm(560), z: mm(720) },
    parts: PARTS,
    joints: JOINTS,
    ...fit,
  };
  return {
    spec: {
      name: whole.name,
      source: whole.source,
      nameSource: whole.source,
      parameters: whole.parameters,
      inputs: [],
      parts: [],
      statements: [],
      milled: { when: 'after banding' },
      silences: [],
      shop,
      thickness: whole.thickness,
    },
    fit: whole,
    findings: [],
    silenced: [],
    reasons: (id, axis) => (id === 'shelf' && axis === 'x' ? WIDTH_REASONS : []),
    place: () => [],
    errors: () => [],
    ...more,
  };
}
