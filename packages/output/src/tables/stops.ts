import type { Jig, Rational, Text } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { type MilledHalf, milledHalves } from '../halves.js';
import { partNames } from '../print/order.js';
import { surfaceName, surfaceOn } from '../print/surface.js';
import { type Cell, count, length, type Table, text } from '../table/table.js';

/** Where the stop stands for slots in a face, and what packs up a clamping beam. */
export const table: TableMaker = { name: 'stops', rank: 4, make };

function make(batch: Batch): Table {
  const rows = sortedItems(batch).flatMap((item) =>
    milledHalves(item.result.fit)
      .filter(({ half }) => half.stop !== undefined || half.packer !== undefined)
      .map((milled) => row(batch, item, milled)),
  );
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
      { heading: 'Remark', kind: 'text', optional: true },
      { heading: 'Packer', kind: 'length', optional: true },
    ],
    rows,
    notes: notes(batch),
    cautions: rows.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

function row(batch: Batch, item: Item, { half, part, parts, mates }: MilledHalf): Cell[] {
  return [
    cabinetCell(batch, item),
    text(partNames(parts)),
    count(parts.length * item.count),
    text(surfaceOn(part, half)),
    text(partNames(mates)),
    text(half.stop === undefined ? 'no stop' : surfaceName(part, half.stop.end)),
    length(half.stop?.at),
    text(half.stop === undefined ? '' : remark(half.stop.at, item.result.spec.shop.jig)),
    length(half.packer),
  ];
}

/** What the operator does where the jig's stop does not stand just there. */
function remark(at: Rational, jig: Jig | undefined): Text {
  if (jig === undefined || at.isZero()) return [];
  const { stop } = jig;
  if (stop === undefined) return ['the jig has no stop: mark out'];
  if (at.lt(stop.least) || at.gt(stop.most)) return ["out of reach of the jig's stop: mark out"];
  if (stop.step === undefined) return [];
  const nearest = at.sub(stop.least).roundTo(stop.step).add(stop.least);
  return nearest.equals(at) ? [] : ["between places of the jig's stop, the nearest is ", nearest];
}

function notes(batch: Batch): Text[] {
  const halves = batch.items.flatMap((item) => item.result.fit.joints.flatMap((joint) => joint.halves));
  const lines: Text[] = [['The stop stands that far from the end or edge named; the slots lie beyond it.']];
  if (halves.some((half) => half.stop?.at.isZero())) {
    lines.push(['At 0 there is no stop to set: the end or edge itself is what the machine registers against.']);
  }
  if (batch.items.some((item) => item.result.spec.shop.jig === undefined)) {
    lines.push(['Without a jig, mark a line there and register the machine against a straight edge on it.']);
  }
  if (halves.some((half) => half.packer !== undefined)) {
    lines.push(['Put the packer under the far end of the clamping beam when only one piece lies under it.']);
  }
  return lines;
}
