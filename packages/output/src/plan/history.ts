import {
  type Axis,
  axisOf,
  type Half,
  type HistoryStep,
  historiesOf,
  type PieceHistory,
  type PieceTurn,
  type Setting,
  type Side,
  say,
  type Text,
  thicknessAxis,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { partNames } from '../print/order.js';
import { placeOn, surfaceName, surfaceOn } from '../print/surface.js';
import { type Cell, type Column, count, type Table, text } from '../table/table.js';
import type { PlannedJob } from './tables.js';

/** What becomes of each part from set-up to set-up, as a table. */
export function historyTable(job: PlannedJob): Table {
  const several = job.items.length > 1;
  const rows = historiesOf(job.plan.setUps).flatMap(({ pieces, steps }) =>
    steps.map((step, i): Cell[] => {
      const first = i === 0;
      return [
        text(first && several ? cabinetsOf(job, pieces) : []),
        text(first ? partsOf(job, pieces) : ''),
        count(i + 1),
        count(step.setUp + 1),
        text(i === 0 ? '' : turnWords(step, job.plan.setUps[step.setUp]?.setting)),
        text(placeMilled(step)),
        text(fenceTold(step)),
      ];
    }),
  );
  return {
    name: 'history',
    title: ['From set-up to set-up: ', ...job.title],
    columns: COLUMNS,
    rows,
    notes: rows.length === 0 ? [] : [NOTE],
    cautions: [],
  };
}

const NOTE: Text = [
  'A half turn sends the datum to the other fence, unless it is made about the line from fence to fence.',
];

const COLUMNS: readonly Column[] = [
  { heading: 'Cabinet', kind: 'text', optional: true },
  { heading: 'Part', kind: 'text' },
  { heading: 'Step', kind: 'count' },
  { heading: 'Set-up', kind: 'count' },
  { heading: 'Turn it', kind: 'text' },
  { heading: 'Mill', kind: 'text' },
  { heading: 'Datum at', kind: 'text' },
];

/** Cabinets one after the other, where pieces of several go the same way. */
const cabinetsOf = ({ items }: PlannedJob, pieces: PieceHistory['pieces']): Text =>
  pieces.flatMap(({ item }, i): Text => {
    const made = items[item];
    return made ? [...(i === 0 ? [] : ['; ']), ...cabinetLabel(made.result.fit)] : [];
  });

function partsOf({ items }: PlannedJob, pieces: PieceHistory['pieces']): string {
  const names = pieces.map(({ item, parts }) =>
    partNames(items[item]?.result.fit.parts.filter(({ id }) => parts.includes(id)) ?? []),
  );
  return [...new Set(names)].join('; ');
}

/** What is milled in a step: "left end", "right face by its top end", "right face, 350 from its bottom end". */
export function placeMilled({ operation: { part, half } }: HistoryStep): Text {
  if (half.role === 'mitre') return [`mitred ${surfaceName(part, half.surface)}`];
  if (half.role === 'edge') return [surfaceOn(part, half)];
  const from = placeOn(part, half, half.from.side);
  const at = half.stop?.at;
  return at && !at.isZero()
    ? say`${surfaceOn(part, half)}, ${at} from its ${from}`
    : [`${surfaceOn(part, half)} by its ${from}`];
}

function fenceTold({ operation: { half }, fenceChanges }: HistoryStep): string {
  if (half.turn) return 'mark out';
  return fenceChanges ? `${half.hand}, was ${half.hand === 'left' ? 'right' : 'left'}` : half.hand;
}

/** How a piece is turned for a step, by what stays where it was: "end for end, bottom face still down". */
export function turnWords({ turns, operation: { part, half } }: HistoryStep, setting: Setting | undefined): string {
  const [only, second] = turns;
  if (!only) return 'as it lies';
  const place = (side = half.from.side) => placeOn(part, half, side);
  const toward = surfaceOn(part, half);
  if (second || Math.abs(only.degrees) !== 180) return `${quarter(only, second)}${toward} toward you`;
  const where = {
    up: `${place()} still ${setting?.pose.reference ?? ''}`,
    toward: `${toward} still toward you`,
    right: `${place(half.datum)} still to the ${half.hand}`,
  }[only.about];
  return `${halfTurn(part, axisOf(kept(only, half)))}, ${where}`;
}

const quarter = (only: PieceTurn, second: PieceTurn | undefined): string =>
  second || Math.abs(only.degrees) !== 90 ? '' : 'by a quarter: ';

/** The turn alone: "turned end for end", "as it lay", "turned" where it is no half turn. */
export function turnShort({ turns, operation: { part, half } }: HistoryStep): string {
  const [only, second] = turns;
  if (!only) return 'as it lay';
  if (second || Math.abs(only.degrees) !== 180) return 'turned';
  return `turned ${halfTurn(part, axisOf(kept(only, half)))}`;
}

/** A side that a turn about one of the operator's directions leaves where it is. */
const kept = ({ about }: PieceTurn, half: Half): Side =>
  ({ up: half.from.side, toward: half.surface, right: half.datum })[about];

/** A half turn by the sides it leaves in place: faces, ends, or edges. */
function halfTurn(part: HistoryStep['operation']['part'], axis: Axis): string {
  if (axis === thicknessAxis(part.attitude)) return 'end for end';
  return axis === part.grain ? 'over' : 'over, end for end';
}
