import {
  type Axis,
  axisOf,
  type Cut,
  type FittedCant,
  type FittedPart,
  highSide,
  list,
  lowSide,
  Rational,
  type Side,
  say,
  type Text,
  thirdAxis,
} from '@dryfit/engine';
import {
  type Batch,
  cabinetCell,
  type Item,
  type Piece,
  pieces,
  sortedItems,
  type TableMaker,
  titleOf,
  warningOf,
} from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { degrees } from '../print/degrees.js';
import { byText, partNames } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import { type Cell, count, length, type Table, text } from '../table/table.js';

/** Grooves, rebates, housings, notches, bevels and cants: everything milled that is not a slot. */
export const table: TableMaker = { name: 'cuts', rank: 5, make };

type Channel = Extract<Cut, { readonly box: unknown }>;
type Bevel = Extract<Cut, { readonly kind: 'bevel' }>;

/** One cut in words and lengths; a bevel has only its surface and the side its toe lies on. */
export interface CutFigures {
  readonly kind: Channel['kind'] | 'bevel' | 'cant';
  readonly surface: Side;
  /** The face the toe of a bevel lies on. */
  readonly toe?: Side | undefined;
  /** How far off square a bevel is, degrees. */
  readonly angle?: number | undefined;
  /** Of a cant: how far in from each side of its corner it goes. */
  readonly legs?: readonly { readonly side: Side; readonly at: Rational }[] | undefined;
  /** The edge the near wall is measured from, and how far in it lies. */
  readonly inFrom?: { readonly side: Side; readonly at: Rational } | undefined;
  readonly width?: Rational | undefined;
  readonly depth?: Rational | undefined;
  /** Where the cut starts and ends, measured from `end`. */
  readonly run?:
    | { readonly end: Side; readonly from: Rational; readonly to: Rational; readonly through: boolean }
    | undefined;
}

function make(batch: Batch): Table {
  const rows = sortedItems(batch).flatMap((item) =>
    pieces(item.result.fit, otherCuts).flatMap((piece) => rowsOf(batch, item, piece)),
  );
  return {
    name: 'cuts',
    title: titleOf('Grooves and other cuts', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Cut', kind: 'text' },
      { heading: 'Into', kind: 'text' },
      { heading: 'Near wall from', kind: 'text' },
      { heading: 'Near wall at', kind: 'length', optional: true },
      { heading: 'Width', kind: 'length', optional: true },
      { heading: 'Depth', kind: 'length', optional: true },
      { heading: 'Along', kind: 'text' },
      { heading: 'Starts at', kind: 'length', optional: true },
      { heading: 'Ends at', kind: 'length', optional: true },
    ],
    rows,
    notes: [],
    cautions: rows.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

function rowsOf(batch: Batch, item: Item, { parts, first }: Piece): Cell[][] {
  return otherCuts(first).map((cut) => [
    cabinetCell(batch, item),
    text(partNames(parts)),
    count(parts.length * item.count),
    text(cut.kind === 'bevel' ? `${degrees(cut.angle ?? 45)} bevel` : cut.kind),
    text(surfaceName(first, cut.surface)),
    text(nearName(first, cut)),
    length(cut.inFrom?.at),
    length(cut.width),
    length(cut.depth),
    text(alongOf(first, cut)),
    length(cut.run?.through ? undefined : cut.run?.from),
    length(cut.run?.through ? undefined : cut.run?.to),
  ]);
}

/** What the near wall of a cut is measured from, in words. */
export function nearName(part: FittedPart, cut: CutFigures): string {
  if (cut.toe !== undefined) return `toe on ${surfaceName(part, cut.toe)}`;
  return cut.inFrom === undefined ? '' : surfaceName(part, cut.inFrom.side);
}

/** Where a cut runs, in words. */
export function alongOf(part: FittedPart, cut: CutFigures): Text {
  if (cut.legs)
    return list(
      cut.legs.map(({ side, at }) => say`${at} in from the ${surfaceName(part, side)}`),
      ', ',
    );
  if (cut.run === undefined) return [];
  return cut.run.through ? ['right through'] : say`from ${surfaceName(part, cut.run.end)}`;
}

/** The figures of every cut of a part that is not a slot, in a fixed order; none while the part has no box. */
export function otherCuts(part: FittedPart): CutFigures[] {
  const figures = part.cuts.flatMap((cut): CutFigures[] => {
    if (cut.kind === 'bevel') return [bevel(cut)];
    return 'box' in cut ? channel(part, cut) : [];
  });
  if (part.cant) figures.push(cant(part.cant));
  return figures.sort(
    (a, b) =>
      byText(a.kind, b.kind) ||
      byText(a.surface, b.surface) ||
      byText(a.inFrom?.side ?? '', b.inFrom?.side ?? '') ||
      (a.inFrom?.at ?? Rational.ZERO).compare(b.inFrom?.at ?? Rational.ZERO) ||
      (a.run?.from ?? Rational.ZERO).compare(b.run?.from ?? Rational.ZERO),
  );
}

function bevel(cut: Bevel): CutFigures {
  return { kind: 'bevel', surface: cut.side, toe: cut.outer, angle: cut.angle };
}

const cant = ({ corner, legs }: FittedCant): CutFigures => ({
  kind: 'cant',
  surface: corner[0],
  legs: [
    { side: corner[0], at: legs[0] },
    { side: corner[1], at: legs[1] },
  ],
});

function channel(part: FittedPart, cut: Channel): CutFigures[] {
  const across = thirdAxis(axisOf(cut.surface), cut.run);
  if (part.box === undefined || across === undefined) return [];
  const { box } = cut;
  const extent = (axis: Axis) => box.hi[axis].sub(box.lo[axis]);
  const near = nearestSide(part.box, box, across);
  const end = nearestSide(part.box, box, cut.run);
  const from = distance(part.box, box, end);
  return [
    {
      kind: cut.kind,
      surface: cut.surface,
      inFrom: { side: near, at: distance(part.box, box, near) },
      width: extent(across),
      depth: extent(axisOf(cut.surface)),
      run: {
        end,
        from,
        to: from.add(extent(cut.run)),
        through: extent(cut.run).equals(part.box.hi[cut.run].sub(part.box.lo[cut.run])),
      },
    },
  ];
}

type Boxed = NonNullable<FittedPart['box']>;

/** How far the cut lies in from a side of its part. */
function distance(part: Boxed, cut: Boxed, side: Side): Rational {
  const axis = axisOf(side);
  return side === lowSide(axis) ? cut.lo[axis].sub(part.lo[axis]) : part.hi[axis].sub(cut.hi[axis]);
}

/** The side the cut lies nearest to; rear, bottom and left where it lies in the middle, as datums do. */
function nearestSide(part: Boxed, cut: Boxed, axis: Axis): Side {
  const [first, second] = axis === 'y' ? [highSide(axis), lowSide(axis)] : [lowSide(axis), highSide(axis)];
  return distance(part, cut, second).lt(distance(part, cut, first)) ? second : first;
}
