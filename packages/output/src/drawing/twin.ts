import type { Side } from '@dryfit/engine';
import { degrees } from '../print/degrees.js';
import { surfaceName } from '../print/surface.js';
import type { Scene, SceneCut, ScenePart } from './scene.js';

/** What a drawing shows, as rows to be read: for those who cannot see it, and those who would rather have figures. */
export interface Twin {
  readonly title: string;
  readonly headings: readonly string[];
  readonly rows: readonly TwinRow[];
}

export interface TwinRow {
  /** One cell a heading. */
  readonly cells: readonly string[];
  /** What it is in the drawing. */
  readonly shape: string;
}

/** Every part with its sizes and, under it, everything cut into it; of one part only, if it is named. */
export function twinOf(scene: Scene, part?: string): Twin {
  const parts = scene.parts.filter((one) => part === undefined || one.part === part);
  return {
    title: part === undefined ? `${scene.title}: parts and cuts` : `${part} of ${scene.title}: sizes and cuts`,
    headings: ['Part', 'What', 'Where', `Along (${scene.units})`, `Across (${scene.units})`, `Depth (${scene.units})`],
    rows: parts.flatMap((one) => [
      partRow(one),
      ...one.cuts.map((cut) => cutRow(scene, one, cut)),
      ...alongRows(one),
      ...markRows(scene, one),
    ]),
  };
}

function partRow(part: ScenePart): TwinRow {
  const [width, depth, height] = part.sizes.map((size) => size ?? 'not fixed');
  const bands = part.bands.map(({ side, band }) => `${surfaceName(part, side)} banded ${band}`);
  const what = [`${part.attitude} of ${part.material}`, ...bands].join(', ');
  return {
    shape: part.shape,
    cells: [part.part, what, '', `width ${width}`, `height ${height}`, `depth ${depth}`],
  };
}

/** Places marked in a part; where each lies is told by the cuts or parts that meet there. */
const markRows = ({ marks = [] }: Scene, { part }: ScenePart): readonly TwinRow[] =>
  marks
    .filter(({ parts }) => parts.includes(part))
    .map(({ shape, words, severity }) => ({ shape, cells: [part, `marked, ${severity}: ${words}`, '', '', '', ''] }));

function cutRow(scene: Scene, part: ScenePart, cut: SceneCut): TwinRow {
  const row = (what: string, where: string, along: string, across: string, depth: string): TwinRow => ({
    shape: cut.shape,
    cells: [part.part, what, where, along, across, depth],
  });
  const named = (side: Side) => surfaceName(part, side);
  const at = named(cut.surface);
  if (cut.measured) {
    const { connector, number, datum, fromDatum, from, across, depth } = cut.measured;
    const reference = from.kind === 'toe' || from.kind === 'heel' ? `the ${from.kind}` : `the ${named(from.side)}`;
    const joint = scene.joints.find((one) => one.joint === cut.joint);
    const mate = joint && (joint.entering === part.part ? joint.host : joint.entering);
    const what = `${connector} ${cut.kind === 'disc' ? 'slot' : cut.kind} ${number}${mate === undefined ? '' : ` for ${mate}`}`;
    return row(what, at, `${fromDatum} from the ${named(datum)}`, `${across} from ${reference}`, depth);
  }
  if (cut.recess) {
    const { width, depth, from, near, far, stops } = cut.recess;
    const ends = stops.map((stop) => `stops ${stop.at} from the ${named(stop.from)}`).join(', ');
    const across = `${near} to ${far} from the ${named(from)}`;
    return row(`${cut.kind}, ${width} wide`, at, ends === '' ? 'from end to end' : ends, across, depth);
  }
  if (cut.legs) {
    const [first, second] = cut.legs.map(({ from, length }) => `${length} from the ${named(from)}`);
    return row(cut.kind, at, first ?? '', second ?? '', '');
  }
  return row(`bevel ${degrees(cut.angle ?? 45)}`, at, '', cut.outer ? `toe on the ${named(cut.outer)}` : '', '');
}

function alongRows(part: ScenePart): readonly TwinRow[] {
  return (part.along ?? []).map((cut) => ({
    shape: cut.shape,
    cells: [
      part.part,
      `${cut.connector} ${cut.kind === 'disc' ? 'slot' : cut.kind} ${cut.number} for ${cut.mate}`,
      cut.surface === undefined ? 'cant' : surfaceName(part, cut.surface),
      `${cut.fromDatum} from the ${cut.datum}`,
      `${cut.across} from the ${cut.from}`,
      cut.depth,
    ],
  }));
}
