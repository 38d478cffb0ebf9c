import type { Text } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { type MilledHalf, milledHalves } from '../halves.js';
import { partNames } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import { type Cell, count, length, type Table, text } from '../table/table.js';

/** Where the stop stands for slots in the field of a face, and what packs up a clamping beam. */
export const table: TableMaker = { name: 'stops', rank: 4, make };

function make(batch: Batch): Table {
  const rows = sortedItems(batch).flatMap((item) =>
    milledHalves(item.result.fit)
      .filter(({ half }) => half.stop !== undefined || half.packer !== undefined)
      .map((milled) => row(batch, item, milled)),
  );
  const packed = batch.items.some((item) =>
    item.result.fit.joints.some((joint) => joint.halves.some((half) => half.packer)),
  );
  const notes: Text[] = [['The stop is set so far from the end named, and the machine registers against it there.']];
  if (packed) notes.push(['Put the packer under the far end of the clamping beam when only one piece lies under it.']);
  return {
    name: 'stops',
    title: titleOf('Stops and packers', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Mill into', kind: 'text' },
      { heading: 'Meets', kind: 'text' },
      { heading: 'Measure from', kind: 'text' },
      { heading: 'Stop at', kind: 'length' },
      { heading: 'Packer', kind: 'length', optional: true },
    ],
    rows,
    notes,
    cautions: rows.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

function row(batch: Batch, item: Item, { half, part, parts, mates }: MilledHalf): Cell[] {
  return [
    cabinetCell(batch, item),
    text(partNames(parts)),
    count(parts.length * item.count),
    text(surfaceName(part, half.surface)),
    text(partNames(mates)),
    text(half.stop === undefined ? 'no stop' : surfaceName(part, half.stop.end)),
    length(half.stop?.at),
    length(half.packer),
  ];
}
