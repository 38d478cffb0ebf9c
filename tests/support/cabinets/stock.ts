import { Rational } from '@dryfit/engine';
import { INCH, mm } from '../spelling.js';
import type { Item, Writer } from './plan.js';

const tenths = (n: number): Rational => Rational.of(n, 10);

export interface StockRecipe {
  /** Nominal thickness of the carcase sheet, tenths of a millimetre. */
  readonly sheet: number;
  /** How much thinner it measures, tenths. */
  readonly thinner: number;
  readonly connector: 'biscuit' | 'loose tenon' | 'dowel';
  readonly layout: 'lines' | 'skipping lines' | 'spread' | 'pitch' | 'two';
  /** Lines or ends of the layout, tenths. */
  readonly first: number;
  readonly step: number;
  readonly jig: 'long' | 'short' | 'without spacers' | 'none';
  readonly poseEdge: 'down' | 'up';
  readonly poseFace: 'down' | 'up';
  /** Machine's base to centre, tenths; undefined for the middle of its range. */
  readonly base: number | undefined;
}

/** Sheets, machine, connector, pattern, jig, pose and limits of a made-up shop. */
export function stockOf(recipe: StockRecipe): readonly Item[] {
  return [...sheets(recipe), ...joiner(recipe), pattern(recipe), ...jig(recipe), ...bench(recipe)];
}

const setting = (head: string, facts: readonly ((w: Writer) => string)[]): Item => ({ head: () => head, facts });

function sheets({ sheet, thinner }: StockRecipe): readonly Item[] {
  const size = (w: Writer): string => `sheet ${w.len(mm(2440))} x ${w.len(mm(1220))}`;
  const grain = (w: Writer): string => `grain along ${w.len(mm(2440))}`;
  const tolerance = (w: Writer): string => w.len(mm('0.2'));
  return [
    setting('material board', [
      (w) => `thickness ${w.len(tenths(sheet))}`,
      (w) => `measured ${w.len(tenths(sheet - thinner))} ± ${tolerance(w)}`,
      size,
      grain,
    ]),
    setting('material panel', [
      (w) => `thickness ${w.len(mm(6))}`,
      (w) => `measured ${w.len(mm('5.8'))} plus ${tolerance(w)} minus ${w.len(mm('0.1'))}`,
      size,
      grain,
    ]),
    setting('band edge', [(w) => `thickness ${w.len(mm('0.8'))}`]),
  ];
}

function joiner({ connector, base, sheet }: StockRecipe): readonly Item[] {
  const centre = (w: Writer): string => {
    const play = `± ${w.len(mm('0.1'))}`;
    if (base !== undefined) return `base to centre ${w.len(tenths(base))} ${play}`;
    return `base to centre ${w.len(mm(4))} to ${w.len(mm(30))} ${play}`;
  };
  const body = (w: Writer): string => `body ${w.len(mm(60))}`;
  if (connector === 'biscuit') {
    return [
      setting('machine cutter', [(w) => `cutter ${w.len(mm(100))}`, (w) => `kerf ${w.len(mm(4))}`, centre, body]),
      setting('connector pin : biscuit', [
        (w) => `along ${w.len(mm(53))}`,
        (w) => `across ${w.len(mm(19))}`,
        (w) => `thickness ${w.len(mm(4))}`,
        (w) => `plunge ${w.len(mm(10))}`,
        () => 'by cutter',
      ]),
    ];
  }
  const round = connector === 'dowel';
  const bit = round ? mm(6) : mm(5);
  const face = Rational.min(mm(11), tenths(sheet).sub(mm(4)));
  const edge = mm(31).sub(face);
  return [
    setting('machine cutter', [(w) => `${round ? 'drill' : 'bit'} ${w.len(bit)}`, centre, body]),
    setting(`connector pin : ${connector}`, [
      ...(round
        ? [(w: Writer) => `diameter ${w.len(bit)}`, (w: Writer) => `length ${w.len(mm(30))}`]
        : [
            (w: Writer) => `along ${w.len(mm(19))}`,
            (w: Writer) => `across ${w.len(mm(30))}`,
            (w: Writer) => `thickness ${w.len(bit)}`,
            (w: Writer) => `slot ${w.len(mm(20))}`,
          ]),
      (w) => `plunge ${w.len(face)} in face, ${w.len(edge)} in edge`,
      () => 'by cutter',
    ]),
  ];
}

function pattern({ layout, first, step }: StockRecipe): Item {
  const [f, s] = [tenths(first), tenths(step)];
  const lines = [0, 1, 2, 3].map((i) => f.add(s.mul(Rational.of(i))));
  const text: Record<StockRecipe['layout'], (w: Writer) => string> = {
    lines: (w) => `lines ${w.list(lines)}`,
    'skipping lines': (w) => `lines ${w.list(lines)} skip within ${w.len(f)}`,
    spread: (w) => `first ${w.len(f)} last ${w.len(f)} pitch at most ${w.len(s)}`,
    pitch: (w) => `first ${w.len(f)} last ${w.len(f)} pitch ${w.len(s)}`,
    two: (w) => `first ${w.len(f)} last ${w.len(INCH.mul(Rational.TWO))}`,
  };
  return setting('pattern row', [text[layout]]);
}

function jig({ jig: kind }: StockRecipe): readonly Item[] {
  if (kind === 'none') return [];
  const spacers = (w: Writer): string =>
    `spacers ${w.list(['6', '10', '12', '19', '25'].map(mm))} within ${w.len(mm('0.4'))}`;
  return [
    setting('jig bed', [
      (w) => `bed ${w.len(mm(kind === 'short' ? 500 : 2000))}`,
      () => 'fences left, right',
      (w) => `stop ${w.len(mm(0))} to ${w.len(mm(kind === 'short' ? 400 : 1900))} step ${w.len(mm('0.1'))}`,
      ...(kind === 'without spacers' ? [] : [spacers]),
      ...(kind === 'long' ? [() => 'hold beam'] : []),
    ]),
  ];
}

function bench({ poseEdge, poseFace }: StockRecipe): readonly Item[] {
  return [
    setting('pose', [() => `edge slots reference ${poseEdge}`, () => `face slots reference ${poseFace}`]),
    setting('limits', [
      (w) => `slot to edge along the run ${w.len(mm(8))}`,
      (w) => `wall beside slot ${w.len(mm(3))}`,
      (w) => `skin under slot ${w.len(mm('2.5'))}`,
      (w) => `step ${w.len(mm('0.3'))}`,
      (w) => `alike ${w.len(mm('0.5'))}`,
    ]),
  ];
}
