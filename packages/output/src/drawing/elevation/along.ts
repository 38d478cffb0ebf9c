import { type Element, element } from '../element.js';
import type { SceneAlong, ScenePart } from '../scene.js';
import { markOf } from '../shape.js';
import { type Ink, LINE, pathOf } from './ink.js';
import { onFace, type Sheet } from './look.js';

type Mark = (shape: string) => string | undefined;

/** Slots along a cant as they lie on the face; of those in the cant itself their mouths, seen as lines. */
export function alongOnFace(sheet: Sheet, part: ScenePart, main: boolean, worst: Mark): readonly Element[] {
  return (part.along ?? [])
    .filter(({ surface }) => (surface === undefined ? main : surface === sheet.look.face))
    .map((cut) => {
      const corners = cut.outline.map((p) => onFace(sheet, p));
      const points = corners.map(([x, y]) => `${Math.round(x * 100) / 100},${Math.round(y * 100) / 100}`).join(' ');
      const mouth =
        cut.surface === undefined
          ? pathOf('behind', [...corners, corners[0] ?? [0, 0]])
          : element('polygon', { class: `opening ${cut.kind}`, points });
      return markOf(cut, 'cut', worst(cut.shape), [mouth]);
    });
}

/** Lines of slots along a cant are square to no border: they are told in words under the face. */
export function sayAlong(ink: Ink, part: ScenePart, face: string, main: boolean): void {
  const here = (part.along ?? []).filter(({ surface }) => (surface === undefined ? main : surface === face));
  const rows = new Map<string, [SceneAlong, ...SceneAlong[]]>();
  for (const cut of here) {
    const row = rows.get(cut.joint);
    if (row) row.push(cut);
    else rows.set(cut.joint, [cut]);
  }
  for (const [first, ...rest] of rows.values()) {
    const lines = [first, ...rest].map(({ fromDatum }) => fromDatum).join(', ');
    const { bottom } = ink.taken;
    ink.text(`for ${first.mate}: ${first.connector}, ${first.depth} deep, along the cant`, [0, bottom + LINE], {
      kind: 'said',
    });
    ink.text(`${lines} from the ${first.datum}, ${first.across} from the ${first.from}`, [0, bottom + 2 * LINE], {
      kind: 'said',
    });
  }
}
