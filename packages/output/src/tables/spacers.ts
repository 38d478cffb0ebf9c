import { type Half, type Spacer, say, type Text } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { type MilledHalf, milledHalves } from '../halves.js';
import { partNames } from '../print/order.js';
import { fenceWord, placeOn, surfaceOn } from '../print/surface.js';
import { type Cell, count, length, lengths, type Table, text } from '../table/table.js';

/** What stands between fence and part, so that one set of marks serves every part. */
export const table: TableMaker = { name: 'spacers', rank: 3, make };

function make(batch: Batch): Table {
  const rows = sortedItems(batch).flatMap((item) =>
    milledHalves(item.result.fit, setting).map((milled) => row(batch, item, milled)),
  );
  return {
    name: 'spacers',
    title: titleOf('Spacers', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Mill into', kind: 'text' },
      { heading: 'Meets', kind: 'text' },
      { heading: 'Datum', kind: 'text' },
      { heading: 'Datum at fence', kind: 'text' },
      { heading: 'Spacer', kind: 'length' },
      { heading: 'Made up of', kind: 'text' },
      { heading: 'Stack off by', kind: 'length', optional: true },
      { heading: 'Marks', kind: 'lengths' },
    ],
    rows,
    notes: notes(batch),
    cautions: rows.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

/** What has to do with the spacer: joints that differ in nothing else share a row. */
function setting(half: Half): unknown {
  return [half.spacer, half.slots.map((slot) => slot.fromZero)];
}

function row(batch: Batch, item: Item, { half, part, parts, mates }: MilledHalf): Cell[] {
  const { spacer } = half;
  return [
    cabinetCell(batch, item),
    text(partNames(parts)),
    count(parts.length * item.count),
    text(surfaceOn(part, half)),
    text(partNames(mates)),
    text(placeOn(part, half, half.datum)),
    text(fenceWord(half)),
    length(spacer.width),
    text(madeUp(spacer)),
    length(spacer.off.isZero() ? undefined : spacer.off),
    lengths(half.slots.map((slot) => slot.fromZero)),
  ];
}

function notes(batch: Batch): Text[] {
  const spacers = batch.items.flatMap((item) =>
    item.result.fit.joints.flatMap((joint) => joint.halves.map((half) => half.spacer)),
  );
  const jigless = batch.items.filter((item) => item.result.spec.shop.jig === undefined).length;
  const lines: Text[] = [];
  if (jigless < batch.items.length) {
    lines.push(['The spacer stands between the fence and the datum of the part; marks are measured from the fence.']);
  }
  if (jigless > 0) lines.push(['Without a jig there is nothing to space: mark out from the table of slots.']);
  if (batch.items.some((item) => item.result.fit.joints.some(({ halves }) => halves.some(({ turn }) => turn)))) {
    lines.push([
      'No edge stands square to a cant, so no fence holds the part: mark its lines out from the end of the cant.',
    ]);
  }
  if (spacers.some((spacer) => !spacer.off.isZero())) {
    lines.push(['"Stack off by" is the stack less the spacer wanted.']);
  }
  return lines;
}

/** How a spacer comes about: "none", "12 + 10", "cut a block", "mark out". */
export function madeUp(spacer: Spacer): Text {
  switch (spacer.kind) {
    case 'none':
      return ['none'];
    case 'stock':
      return sum(spacer);
    case 'cut':
      return say`cut a block ${spacer.width}`;
    case 'missing':
      return spacer.stack.length === 0 ? ['not in stock'] : ['not in stock; nearest ', ...sum(spacer)];
    case 'mark out':
      return ['mark out'];
  }
}

function sum(spacer: Spacer): Text {
  return spacer.stack.flatMap((piece, i) => (i === 0 ? [piece] : [' + ', piece]));
}
