import { type Axis, axisOf, opposite, type Side } from '@dryfit/engine';
import { partNames } from '../../print/order.js';
import { surfaceName } from '../../print/surface.js';
import { AXIS_NUMBER } from '../exploded/vector.js';
import { planeAt } from '../scene/figures.js';
import type { Scene, SceneCut, ScenePart } from '../scene.js';

/** Distances along one axis of a part from one of its sides, with the words that say what they are. */
export interface Measure {
  /** Side of the part the cuts open to. */
  readonly surface: Side;
  readonly axis: Axis;
  readonly zero: Side;
  /** Coordinate, the printed distance, and what it is measured at. */
  readonly marks: readonly { readonly at: number; readonly label: string; readonly cuts: readonly SceneCut[] }[];
  readonly title: readonly string[];
}

/** Slots of one joint in one side of a part. */
export interface SlotGroup {
  readonly surface: Side;
  readonly joint: string;
  readonly mates: readonly string[];
  readonly cuts: readonly SceneCut[];
  readonly measured: NonNullable<SceneCut['measured']>;
}

export const middleOf = (cut: SceneCut, axis: Axis): number =>
  (cut.box.lo[AXIS_NUMBER[axis]] + cut.box.hi[AXIS_NUMBER[axis]]) / 2;

export const namesOf = (parts: readonly string[]): string =>
  partNames(
    parts.map((id) => {
      const [, kind = id, index] = /^(.*) (\d+)$/.exec(id) ?? [];
      return { id, kind, index: index === undefined ? undefined : Number(index) };
    }),
  );

/** The slots of a part, by joint and side. */
export function slotGroups(scene: Scene, part: ScenePart): readonly SlotGroup[] {
  const mates = new Map(
    scene.joints.map(({ joint, entering, host }) => [joint, entering === part.part ? host : entering]),
  );
  const groups = new Map<string, SlotGroup>();
  for (const cut of part.cuts) {
    if (!cut.measured || cut.joint === undefined) continue;
    const key = `${cut.surface} ${cut.joint}`;
    const known = groups.get(key);
    groups.set(key, {
      surface: cut.surface,
      joint: cut.joint,
      mates: [mates.get(cut.joint) ?? ''],
      measured: cut.measured,
      ...known,
      cuts: [...(known?.cuts ?? []), cut],
    });
  }
  return [...groups.values()];
}

/** Along the run from the datum; joints with the same lines from the same datum share a row. */
export function alongRuns(part: ScenePart, groups: readonly SlotGroup[]): readonly Measure[] {
  const rows = new Map<string, SlotGroup>();
  for (const group of groups) {
    const { surface, measured, cuts } = group;
    const lines = cuts.map((cut) => `${cut.measured?.fromDatum} ${middleOf(cut, cut.run).toFixed(4)}`);
    const key = [surface, measured.datum, measured.connector, measured.depth, inEdge(part, measured), ...lines].join(
      '|',
    );
    const known = rows.get(key);
    rows.set(
      key,
      known ? { ...known, mates: [...known.mates, ...group.mates], cuts: [...known.cuts, ...group.cuts] } : group,
    );
  }
  return [...rows.values()].map(({ surface, measured, cuts, mates }) => {
    const axis = cuts[0]?.run ?? axisOf(measured.datum);
    return {
      surface,
      axis,
      zero: measured.datum,
      marks: marksOf(cuts, axis, (cut) => cut.measured?.fromDatum ?? ''),
      title: [
        `for ${namesOf([...new Set(mates)])}: ${measured.connector}, ${measured.depth} deep`,
        `from the ${surfaceName(part, measured.datum)}${inEdge(part, measured)}`,
      ],
    };
  });
}

/** How far in an edge or mitre the slots lie across the run, in words. */
function inEdge(part: ScenePart, { from, across }: SlotGroup['measured']): string {
  if (from.kind === 'end') return '';
  return from.kind === 'face'
    ? `, ${across} in from the ${surfaceName(part, from.side)}`
    : `, ${across} from the ${from.kind}`;
}

/** Across the run on a face, from each end it is measured from; in an edge there is no room, and the strip says it. */
export function acrossRuns(part: ScenePart, groups: readonly SlotGroup[]): readonly Measure[] {
  const rows = new Map<string, Measure>();
  for (const { surface, measured, cuts, mates } of groups) {
    const { kind, side } = measured.from;
    if (kind !== 'end') continue;
    const axis = axisOf(side);
    const key = `${surface} ${side}`;
    const known = rows.get(key);
    const at = middleOf(cuts[0] as SceneCut, axis);
    const same = known?.marks.find((mark) => Math.abs(mark.at - at) < 1e-6);
    const named = `${measured.across} ${namesOf(mates)}`;
    const marks = same
      ? (known?.marks ?? []).map((mark) =>
          mark === same ? { ...mark, label: `${mark.label}, ${namesOf(mates)}`, cuts: [...mark.cuts, ...cuts] } : mark,
        )
      : [...(known?.marks ?? []), { at, label: named, cuts }];
    rows.set(key, { surface, axis, zero: side, marks, title: [`slots, from the ${surfaceName(part, side)}`] });
  }
  return [...rows.values()];
}

function marksOf(cuts: readonly SceneCut[], axis: Axis, label: (cut: SceneCut) => string): Measure['marks'] {
  const marks = new Map<string, Measure['marks'][number]>();
  for (const cut of cuts) {
    const at = middleOf(cut, axis);
    const known = marks.get(at.toFixed(4));
    marks.set(at.toFixed(4), known ? { ...known, cuts: [...known.cuts, cut] } : { at, label: label(cut), cuts: [cut] });
  }
  return [...marks.values()].sort((a, b) => a.at - b.at);
}

/** Walls of grooves, rebates and housings, and legs of notches. */
export function recessMeasures(part: ScenePart, mateOf: (cut: SceneCut) => string): readonly Measure[] {
  return part.cuts.flatMap((cut): readonly Measure[] => {
    if (cut.legs && part.box) {
      return cut.legs.map(({ from, length }) => ({
        surface: cut.surface,
        axis: axisOf(from),
        zero: from,
        marks: [{ at: planeAt(cut.box, opposite(from)), label: length, cuts: [cut] }],
        title: [cut.kind],
      }));
    }
    if (!cut.recess) return [];
    const { from, near, far, width, depth, stops } = cut.recess;
    const axis = axisOf(from);
    const marks = [
      { at: planeAt(cut.box, from), label: near, cuts: [cut] },
      { at: planeAt(cut.box, opposite(from)), label: far, cuts: [cut] },
    ];
    const mate = mateOf(cut);
    const stopped = stops.map((stop) => `stops ${stop.at} from the ${surfaceName(part, stop.from)}`);
    return [
      {
        surface: cut.surface,
        axis,
        zero: from,
        marks: marks.filter(({ at }) => Math.abs(at - planeAt(part.box ?? cut.box, from)) > 1e-6),
        title: [
          `${cut.kind}${mate === '' ? '' : ` for ${mate}`}: ${width} wide, ${depth} deep`,
          `from the ${surfaceName(part, from)}`,
          ...(stopped.length > 0 ? [stopped.join(', ')] : []),
        ],
      },
    ];
  });
}
