import { type Element, element } from '../element.js';
import { textWidth } from '../elevation/ink.js';
import { anchorsOf } from '../exploded/anchors.js';
import { arranged } from '../exploded/exploded.js';
import { boundsOf } from '../exploded/flat.js';
import { NAME_HEIGHT, namesBeside } from '../exploded/names.js';
import { figure, paint } from '../exploded/paint.js';
import { tightly } from '../exploded/sheet.js';
import { type SpreadPart, standing } from '../exploded/spread.js';
import { plus, times, type Vector } from '../exploded/vector.js';
import { type Flat, onPaper, USUAL_VIEW, type View } from '../exploded/view.js';
import { wordsAround } from '../exploded/words.js';
import type { Scene, SceneStep } from '../scene.js';
import { worstOf } from '../shape.js';
import { warningLines } from '../warning.js';
import { arrow } from './arrow.js';
import { drawnOut } from './out.js';

const WIDTH = 960;
const HEIGHT = 640;
const COLUMN = 170;
const FOOT = 44;
const LINE = 20;

/** Most arrows of parts that come the same way; of more, the first stands for all. */
const MOST_ARROWS = 4;

/**
 * One step of a glue-up, the first being 0: what is there drawn closed, what comes drawn where it comes from, with an
 * arrow and its words. Undefined where there is no such step.
 * @param from how it is looked at; unless said, so that what comes stands before what is there
 */
export function stepDrawing(scene: Scene, number: number, from?: Omit<View, 'apart'>): Element | undefined {
  const step = scene.steps?.[number];
  if (!step) return undefined;
  const view = from ?? towardComing(step);
  const { parts, ways } = drawnOut(scene, step);
  const { eye, bodies, order, whole } = arranged(scene, { ...view, apart: 0 }, parts);
  const lines = [...warningLines(scene), ...folded(step.label), ...step.notes.flatMap(folded)];
  const head = 44 + lines.length * LINE;
  const named = namesOf(scene, step);
  const rows = Math.ceil(Math.min(bodies.length, named.size) / 2) * NAME_HEIGHT;
  const height = Math.max(HEIGHT, head + rows + FOOT);
  const room = { left: COLUMN, right: WIDTH - COLUMN, top: head, bottom: height - FOOT };
  const seen = order.flatMap(({ hull }) => hull);
  const sheet = tightly(boundsOf(seen.length > 0 ? seen : [[0, 0]]), room);
  const worst = worstOf(scene);
  const names = anchorsOf(order, eye)
    .filter(({ body }) => named.has(body.part.part))
    .map(({ body, at, hidden }) => ({ part: body.part, words: body.part.part, at: sheet(at), hidden }));
  const drawn = boundsOf(seen.length > 0 ? seen.map(sheet) : [[WIDTH / 2, height / 2]]);
  const title = `${scene.title}, step ${number + 1} of ${scene.steps?.length ?? 0}`;
  return element(
    'svg',
    { class: 'dryfit-drawing step', viewBox: `0 0 ${WIDTH} ${figure(height)}`, role: 'group', 'aria-label': title },
    element('title', {}, title),
    element(
      'g',
      { class: 'heading told' },
      element('text', { class: 'title', x: 16, y: 26 }, title),
      ...lines.map((line, i) => element('text', { x: 16, y: 50 + i * LINE }, line)),
    ),
    element('g', { class: 'parts' }, ...paint(order, { eye, sheet, mark: worst, hidden: false })),
    element('g', { class: 'sides' }, ...wordsAround(whole, eye, sheet, Math.min(drawn.bottom, room.bottom), room)),
    element(
      'g',
      { class: 'names' },
      ...namesBeside(names, {
        left: Math.max(COLUMN - 12, drawn.left - 40),
        right: Math.min(WIDTH - COLUMN + 12, drawn.right + 40),
        top: head + 10,
        bottom: height - FOOT,
      }),
    ),
    element('g', { class: 'ways' }, ...arrows(step, parts, ways, (p) => sheet(onPaper(eye, p)))),
  );
}

/** From the side that most comes from, so that nothing stands before it. */
function towardComing({ coming }: SceneStep): Omit<View, 'apart'> {
  const sum = coming.reduce<Vector>((all, { along }) => plus(all, along), [0, 0, 0]);
  const most = Math.max(...sum.map(Math.abs));
  const turn = sum[1] < 0 && -sum[1] === most ? 180 - USUAL_VIEW.turn : USUAL_VIEW.turn;
  return {
    turn: sum[0] > 0 && sum[0] === most ? -turn : turn,
    tilt: sum[2] > 0 && sum[2] === most ? -USUAL_VIEW.tilt : USUAL_VIEW.tilt,
  };
}

/** Parts that come, and those they are joined to. */
function namesOf({ joints }: Scene, { coming, placed }: SceneStep): ReadonlySet<string> {
  const come = new Set(coming.map(({ part }) => part));
  const there = new Set(placed);
  const joined = joints.flatMap(({ entering, host }) =>
    [
      [entering, host],
      [host, entering],
    ].flatMap(([a = '', b = '']) => (come.has(a) && there.has(b) ? [b] : [])),
  );
  return new Set([...come, ...joined]);
}

/** From each part that comes toward its place; the words once for each way. */
function arrows(
  step: SceneStep,
  parts: readonly SpreadPart[],
  ways: ReadonlyMap<string, Vector>,
  at: (p: Vector) => Flat,
): readonly Element[] {
  const drawn = new Map(parts.map((one) => [one.part.part, one]));
  const alike = new Map<string, typeof step.coming>();
  for (const one of step.coming) alike.set(one.words, [...(alike.get(one.words) ?? []), one]);
  return [...alike.values()].flatMap((group) =>
    (group.length > MOST_ARROWS ? group.slice(0, 1) : group).flatMap(({ part, words }, i) => {
      const [own, way] = [drawn.get(part), ways.get(part)];
      if (!own || !way) return [];
      const from = plus(faceToward(own, way), own.shift);
      return [arrow(at(from), at(plus(from, times(way, 0.85))), i === 0 ? words : undefined)];
    }),
  );
}

/** The middle of the side of a part that goes first, or of the edge or corner where it goes slantwise. */
function faceToward(part: SpreadPart, way: Vector): Vector {
  const box = standing(part);
  const on = (i: 0 | 1 | 2): number =>
    way[i] > 1e-9 ? box.hi[i] : way[i] < -1e-9 ? box.lo[i] : (box.lo[i] + box.hi[i]) / 2;
  return [on(0), on(1), on(2)];
}

/** Words in lines that the sheet is wide enough for. */
function folded(words: string): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer) > WIDTH - 64) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
