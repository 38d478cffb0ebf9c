import type { Side } from '@dryfit/engine';
import { degrees } from '../../print/degrees.js';
import { surfaceName } from '../../print/surface.js';
import type { SceneCut, SceneJoint, ScenePart } from '../scene.js';
import { type Ink, LINE, pathOf, TEXT, textWidth } from './ink.js';
import { type Flank, isLevel, type Sheet } from './look.js';
import { namesOf } from './measures.js';
import { depthOf, drawRow, type Row } from './row.js';
import { depthIn, GAP, outAt, placeOn, type Strip } from './strip.js';
import type { Asked } from './view.js';

/** A border from the face outward: hatching or band, strip, words, rows. */
export function drawFlank(
  ink: Ink,
  asked: Asked,
  sheet: Sheet,
  flank: Flank,
  strips: readonly Strip[],
  rows: readonly Row[],
  joints: readonly SceneJoint[],
): void {
  const { part, look } = asked;
  const side = look.at[flank];
  const place = placeOn(flank, sheet);
  const length = isLevel(flank) ? sheet.width : sheet.height;
  const strip = strips.find((one) => one.flank === flank);
  const datum = part.cuts.some((cut) => cut.measured?.datum === side);
  const band = part.bands.find((one) => one.side === side);
  if (datum)
    ink.add(
      pathOf(
        'hatch',
        [place(0, 2), place(length, 2)],
        ...hatching(length).map(([a, b]) => [place(a, 2), place(b, 10)]),
      ),
    );
  if (band) ink.add(pathOf('band', [place(0, 0), place(length, 0)]));
  let out = strip ? Math.max(strip.far + 2, drawAcross(ink, part, strip, sheet, length)) : GAP;
  const words = broken(wordsFor(asked, side, datum, band?.band, strip ? [] : joints), length);
  // Words longer than the border reach under the figures at the end of a strip beside it.
  if (isLevel(flank) && words.some((line) => textWidth(line) > length)) {
    const other = strips.find((one) => one.flank === (flank === 'top' ? 'left' : 'right'));
    if (other) out = Math.max(out, acrossIn(part, other).length * ACROSS_STEP + 10);
  }
  for (const line of flank === 'top' || flank === 'left' ? [...words].reverse() : words) {
    const [x, y] = place(length / 2, out + LINE / 2);
    if (isLevel(flank)) ink.text(line, [x, y + TEXT * 0.35], { anchor: 'middle', kind: 'side' });
    else ink.text(line, [x + TEXT * 0.35, y], { anchor: 'middle', kind: 'side', upward: true });
    out += LINE;
  }
  out += 2;
  for (const row of rows) {
    drawRow(ink, row, flank, out, length, place);
    out += depthOf(row, flank);
  }
}

const STEP = 9;

/** Slanted strokes along a datum edge. */
function hatching(length: number): readonly (readonly [number, number])[] {
  const count = Math.max(1, Math.floor((length - 6) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => [i * STEP, Math.min(length, i * STEP + 6)] as const);
}

function wordsFor(
  { part }: Asked,
  side: Side,
  datum: boolean,
  band: string | undefined,
  joints: readonly SceneJoint[],
): readonly string[] {
  const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === side);
  const mates = joints.flatMap((joint) => {
    if (joint.entering === part.part && joint.enteringSide === side) return [joint.host];
    return joint.host === part.part && joint.hostSide === side ? [joint.entering] : [];
  });
  const measured = part.cuts.some((cut) => cut.measured?.from.kind === 'end' && cut.measured.from.side === side);
  return [
    `${datum ? 'datum: ' : measured ? 'reference: ' : ''}${surfaceName(part, side)}`,
    ...(band === undefined ? [] : [`banded ${band}`]),
    ...(bevel?.outer ? [`bevelled ${degrees(bevel.angle ?? 45)}, toe on the ${surfaceName(part, bevel.outer)}`] : []),
    ...(mates.length > 0 ? [`to ${namesOf([...new Set(mates)])}`] : []),
  ];
}

/** Words in lines no longer than the border, as far as they can be. */
function broken(words: readonly string[], length: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    if (last === undefined || textWidth(`${last}, ${word}`) > length) lines.push(word);
    else lines[lines.length - 1] = `${last}, ${word}`;
  }
  return lines;
}

const ACROSS_STEP = 14 + TEXT;

/** A slot for each distance across an edge that is to be told. */
function acrossIn(part: ScenePart, { side }: Strip): readonly SceneCut[] {
  const slots = part.cuts.filter((cut) => cut.measured && cut.surface === side);
  const keyOf = ({ measured }: SceneCut) => `${measured?.across} ${measured?.from.kind} ${measured?.from.side}`;
  return [...new Map(slots.map((cut) => [keyOf(cut), cut])).values()];
}

/** How far in from its reference the slots of an edge lie, as a figure at the end of the strip; returns how far out it reaches. */
function drawAcross(ink: Ink, part: ScenePart, strip: Strip, sheet: Sheet, length: number): number {
  const place = placeOn(strip.flank, sheet);
  // At one end of each strip, so chosen that no two strips have theirs in one corner.
  const atEnd = strip.flank === 'top' || strip.flank === 'right';
  const [end, way] = atEnd ? [length, 1] : [0, -1];
  const level = isLevel(strip.flank);
  let at = 6;
  let out = strip.far;
  for (const cut of acrossIn(part, strip)) {
    const { from, across } = cut.measured as NonNullable<SceneCut['measured']>;
    const middle = outAt(strip, depthIn(strip, sheet, cut));
    const near =
      from.kind === 'face' ? from.side === sheet.look.face : (strip.toe === 'near') === (from.kind === 'toe');
    const edge = near ? strip.near : strip.far;
    const past = (by: number) => end + way * by;
    ink.path('dimension', [place(past(at + 3), edge), place(past(at + 3), middle)]);
    ink.path('extension', ...[edge, middle].map((out) => [place(end, out), place(past(at + 7), out)]));
    const [x, y] = place(past(at + 10), (strip.near + strip.far) / 2);
    if (level) ink.text(across, [x, y + TEXT * 0.35], { anchor: atEnd ? 'start' : 'end', kind: 'figure' });
    else ink.text(across, [x, atEnd ? y + TEXT : y - 3], { anchor: 'middle', kind: 'figure' });
    at += level ? 18 + textWidth(across) : ACROSS_STEP;
    if (!level) out = Math.max(out, (strip.near + strip.far + textWidth(across)) / 2 + 4);
  }
  return out;
}
