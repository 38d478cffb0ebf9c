import type { Scene, ScenePart } from '../scene.js';
import type { Ink, Patch } from './ink.js';
import { acrossPaper, type Sheet, upPaper } from './look.js';
import { mouthOnFace } from './marks.js';
import { rectOn } from './outline.js';

const WORD = 'grain';
/** Lengths of the line, the longest that goes in being taken. */
const LENGTHS = [130, 96, 66];
const WIDE = 22;
/** Where it is tried, the middle first. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

/** The way the grain runs, as a word on a line with two ends, where nothing is cut; left out where there is no room. */
export function drawGrain(ink: Ink, sheet: Sheet, part: ScenePart, scene: Scene): boolean {
  const level = part.grain === acrossPaper(sheet.look);
  if (!level && part.grain !== upPaper(sheet.look)) return false;
  const run = level ? sheet.width : sheet.height;
  const room = level ? sheet.height : sheet.width;
  const taken = takenOn(sheet, part, scene);
  for (const [long, share] of LENGTHS.flatMap((length) => SHARES.map((at) => [length, at] as const))) {
    for (const along of SHARES) {
      const middle = [run * along, room * share] as const;
      if (middle[0] - long / 2 < 4 || middle[0] + long / 2 > run - 4) continue;
      if (middle[1] - WIDE / 2 < 4 || middle[1] + WIDE / 2 > room - 4) continue;
      const [x, y] = level ? middle : [middle[1], middle[0]];
      const [a, b] = level ? [long / 2, WIDE / 2] : [WIDE / 2, long / 2];
      const patch = { left: x - a, right: x + a, top: y - b, bottom: y + b };
      if (taken.some((other) => crosses(patch, other))) continue;
      draw(ink, x, y, long / 2, level);
      return true;
    }
  }
  return false;
}

const crosses = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

function takenOn(sheet: Sheet, part: ScenePart, scene: Scene): readonly Patch[] {
  const cuts = part.cuts.map((cut) =>
    cut.mouth && cut.surface === sheet.look.face ? mouthOnFace(sheet, cut) : rectOn(sheet, cut.box),
  );
  const met = scene.joints.flatMap(({ entering, host, contact }) =>
    contact && (entering === part.part || host === part.part) ? [rectOn(sheet, contact)] : [],
  );
  return [...cuts, ...met].map(({ left, right, top, bottom }) => ({
    left: left - 4,
    right: right + 4,
    top: top - 4,
    bottom: bottom + 4,
  }));
}

function draw(ink: Ink, x: number, y: number, half: number, level: boolean): void {
  const at = (along: number, across: number) =>
    level ? ([x + along, y + across] as const) : ([x + across, y + along] as const);
  ink.path(
    'grain',
    [at(-half, 0), at(half, 0)],
    ...[-1, 1].map((way) => [at(way * (half - 9), -5), at(way * half, 0), at(way * (half - 9), 5)]),
  );
  ink.text(WORD, level ? [x, y + 5] : [x + 5, y], { anchor: 'middle', kind: 'said', upward: !level, clear: true });
}
