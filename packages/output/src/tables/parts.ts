import {
  type Axis,
  type FittedPart,
  type Material,
  Rational,
  type Text,
  thicknessAxis,
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
import { SAWING_CAUTIONS } from '../cautions.js';
import { byText, partNames } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import { type Cell, count, length, type Table, text } from '../table/table.js';

/** The cut list: every piece with its size at the saw, its finished size and its bands. */
export const table: TableMaker = { name: 'parts', rank: 1, make };

interface Blank {
  readonly material: string;
  readonly size: FittedPart['cutSize'];
  readonly cells: readonly Cell[];
}

function make(batch: Batch): Table {
  const blanks = sortedItems(batch).flatMap((item) =>
    pieces(item.result.fit, bandWords).flatMap((piece) => cut(batch, item, piece)),
  );
  // The sort keeps the order of names where material and size are the same.
  blanks.sort((a, b) => byText(a.material, b.material) || largestFirst(a, b));
  return {
    name: 'parts',
    title: titleOf('Cut list', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Material', kind: 'text' },
      { heading: 'Cut length', kind: 'length' },
      { heading: 'Cut width', kind: 'length' },
      { heading: 'Thickness', kind: 'length' },
      { heading: 'Bands', kind: 'text', optional: true },
      { heading: 'Finished length', kind: 'length', optional: true },
      { heading: 'Finished width', kind: 'length', optional: true },
    ],
    rows: blanks.map((blank) => blank.cells),
    notes: notes(batch),
    cautions: blanks.length === 0 ? [] : SAWING_CAUTIONS,
  };
}

/** The rows of one piece: itself, and before it the layers it is glued up from. */
function cut(batch: Batch, item: Item, { parts, first }: Piece): Blank[] {
  const names = partNames(parts);
  const made = parts.length * item.count;
  const lead = (part: string, n: number, material: string) => [
    cabinetCell(batch, item),
    text(part),
    count(n),
    text(material),
  ];
  const own: Blank = {
    material: first.material,
    size: first.cutSize,
    cells: [
      ...lead(names, made, first.material),
      ...sizeCells(first.cutSize),
      text(bandWords(first)),
      ...finishedCells(first),
    ],
  };
  const layers = layersOf(item, first).map(({ material, each, size }) => ({
    material: material.name,
    size,
    cells: [
      ...lead(`layers of ${names}`, made * each, material.name),
      ...sizeCells(size),
      text(''),
      length(undefined),
      length(undefined),
    ],
  }));
  return [...layers, own];
}

/** The sheets a glued-up part is made of, with how many of each, cut larger than finished as the material says. */
function layersOf(item: Item, part: FittedPart) {
  const { materials } = item.result.spec.shop;
  const glued = materials.get(part.material);
  const names = glued?.layers ?? [];
  const over = glued?.oversize ?? Rational.ZERO;
  return [...new Set(names)].flatMap((name) => {
    const material = materials.get(name);
    if (material === undefined) return [];
    const size = part.cutSize && {
      length: part.cutSize.length.add(over),
      width: part.cutSize.width.add(over),
      thickness: sheetThickness(material, item.result.fit.thickness),
    };
    return [{ material, each: names.filter((other) => other === name).length, size }];
  });
}

function sheetThickness(material: Material, basis: 'nominal' | 'measured'): Rational {
  return (basis === 'measured' ? (material.measured ?? material.thickness) : material.thickness).value;
}

function sizeCells(size: FittedPart['cutSize']): Cell[] {
  if (size === undefined) return [text('not fixed'), text('not fixed'), text('not fixed')];
  return [length(size.length), length(size.width), length(size.thickness)];
}

function bandWords(part: FittedPart): Text {
  const bands = [...part.bands].sort((a, b) => byText(a.side, b.side));
  return bands.flatMap((band, i) => [
    `${i > 0 ? '; ' : ''}${surfaceName(part, band.side)} ${band.band} `,
    band.thickness,
  ]);
}

/** Finished size along and across the grain, where bands make it another than the cut size. */
function finishedCells(part: FittedPart): Cell[] {
  const across = thirdAxis(part.grain, thicknessAxis(part.attitude));
  const of = (axis: Axis | undefined) =>
    length(axis === undefined || part.bands.length === 0 ? undefined : part.extent[axis]);
  return [of(part.grain), of(across)];
}

function largestFirst(a: Blank, b: Blank): number {
  if (a.size === undefined || b.size === undefined)
    return (a.size === undefined ? 1 : 0) - (b.size === undefined ? 1 : 0);
  return (
    b.size.thickness.compare(a.size.thickness) ||
    b.size.length.compare(a.size.length) ||
    b.size.width.compare(a.size.width)
  );
}

function notes(batch: Batch): Text[] {
  const bases = new Set(batch.items.map((item) => item.result.fit.thickness));
  const basis = [...bases]
    .sort(byText)
    .map((base) => `${base} sheet thickness`)
    .join(' and ');
  const lines: Text[] = [['Length runs with the grain, width across it.'], [`Sizes are worked from the ${basis}.`]];
  const parts = batch.items.flatMap((item) => item.result.fit.parts);
  if (parts.some(({ turn }) => turn)) {
    lines.push([
      'The width of a turned part runs from one end of its cant to the other, worked out to a thousandth of a mm.',
    ]);
  }
  if (parts.some(({ cant }) => cant)) lines.push(['Sizes of a canted part are those before its corner is cut off.']);
  if (batch.items.some((item) => item.result.fit.parts.some((part) => part.bands.length > 0))) {
    lines.push(['Cut sizes are without the bands, finished sizes with them.']);
  }
  return lines;
}
