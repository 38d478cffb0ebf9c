import type { Fit, FittedJoint, Text } from '@dryfit/engine';
import { type Batch, cabinetCell, type Item, sortedItems, type TableMaker, titleOf, warningOf } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { type MilledHalf, milledHalves } from '../halves.js';
import { byText, partNames } from '../print/order.js';
import { fenceWord, placeOn, surfaceName, surfaceOn } from '../print/surface.js';
import { type Cell, count, length, lengths, type Table, text } from '../table/table.js';

/** Where every slot goes: both halves of every joint, from the part's own datum edge and reference. */
export const table: TableMaker = { name: 'slots', rank: 2, make };

/** What each row of the table is about, in the order of the rows. */
export function slotRows(batch: Batch): readonly { readonly item: Item; readonly milled: MilledHalf }[] {
  return sortedItems(batch).flatMap((item) => milledHalves(item.result.fit).map((milled) => ({ item, milled })));
}

function make(batch: Batch): Table {
  const items = sortedItems(batch);
  const rows = slotRows(batch).map(({ item, milled }) => row(batch, item, milled));
  return {
    name: 'slots',
    title: titleOf('Slots', batch),
    warning: warningOf(batch),
    columns: [
      { heading: 'Cabinet', kind: 'text', optional: true },
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Mill into', kind: 'text' },
      { heading: 'Meets', kind: 'text' },
      { heading: 'Datum', kind: 'text' },
      { heading: 'Datum at fence', kind: 'text' },
      { heading: 'From datum', kind: 'lengths' },
      { heading: 'Reference', kind: 'text' },
      { heading: 'From reference', kind: 'length' },
      { heading: 'Depth', kind: 'length' },
      { heading: 'Connector', kind: 'text' },
    ],
    rows,
    notes: [['All distances are to the middle of the slot or hole.'], ...items.flatMap((item) => leftOut(batch, item))],
    cautions: rows.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

function row(batch: Batch, item: Item, { half, joint, part, parts, mates }: MilledHalf): Cell[] {
  return [
    cabinetCell(batch, item),
    text(partNames(parts)),
    count(parts.length * item.count),
    text(half.role === 'mitre' ? `mitre at ${surfaceName(part, half.surface)}` : surfaceOn(part, half)),
    text(partNames(mates)),
    text(placeOn(part, half, half.datum)),
    text(fenceWord(half)),
    lengths(half.slots.map((slot) => slot.fromDatum)),
    text(referenceName(half, part)),
    length(half.across),
    length(half.depth),
    text(joint.connector?.name ?? ''),
  ];
}

/** What the slots are measured from across the joint: "bottom face", "bottom end", "toe of the mitre". */
function referenceName(half: MilledHalf['half'], part: MilledHalf['part']): string {
  const { kind, side } = half.from;
  return kind === 'toe' || kind === 'heel' ? `${kind} (${surfaceName(part, side)})` : placeOn(part, half, side);
}

/** What has no slots although it could have: lines left out, and joints without connectors. */
function leftOut(batch: Batch, item: Item): Text[] {
  const { fit } = item.result;
  const cell = cabinetCell(batch, item);
  const where: Text = cell.kind === 'text' ? [...cell.text, ', '] : [];
  const joints = [...fit.joints].sort((a, b) => byText(a.id, b.id));
  return [...joints.flatMap((joint) => linesNote(where, joint)), ...withoutNotes(where, fit)];
}

function linesNote(where: Text, joint: FittedJoint): Text[] {
  const notes: Text[] = [];
  for (const use of ['skipped', 'left out'] as const) {
    const lines = joint.lines.filter((line) => line.use === use);
    if (lines.length === 0) continue;
    const why =
      use === 'skipped' ? 'too near an end of the contact, skipped as its pattern says' : 'left out as written';
    const positions: Text = lines.flatMap((line, i) => (i === 0 ? [line.fromZero] : [', ', line.fromZero]));
    notes.push([...where, `${joint.id}: no slot at `, ...positions, ` from zero (${why}).`]);
  }
  return notes;
}

/** Joints the spec leaves without connectors, gathered by the reason it gives. */
function withoutNotes(where: Text, fit: Fit): Text[] {
  const byReason = new Map<string, string[]>();
  for (const joint of fit.joints) {
    if (joint.without === undefined) continue;
    byReason.set(joint.without, [...(byReason.get(joint.without) ?? []), joint.id]);
  }
  return [...byReason]
    .sort(([a], [b]) => byText(a, b))
    .map(([reason, ids]) => [...where, `no connectors ("${reason}"): ${ids.sort(byText).join(', ')}.`]);
}
