import { isFace, SIDES, type Side, thicknessAxis } from '@dryfit/engine';
import type { ScenePart } from '../scene.js';

/** The faces to be drawn: those with something cut into them, the fuller one first; else the one usually looked at. */
export function facesOf(part: ScenePart): readonly Side[] {
  const axis = thicknessAxis(part.attitude);
  const faces = SIDES.filter((side) => isFace(side, part.attitude));
  const count = (side: Side) => [...part.cuts, ...(part.along ?? [])].filter((cut) => cut.surface === side).length;
  const cut = faces.filter((side) => count(side) > 0).sort((a, b) => count(b) - count(a));
  return cut.length > 0 ? cut : [axis === 'x' ? 'right' : axis === 'y' ? 'front' : 'top'];
}
