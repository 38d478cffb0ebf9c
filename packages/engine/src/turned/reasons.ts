import type { Reason } from '../fit/fit.js';
import type { Solved } from '../sizes/solved.js';
import { partStatement } from '../sizes/system.js';
import { type Axis, dimensionOf } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import { legFrom } from './cant.js';
import { cantUnder } from './ends.js';
import { frameOf } from './frame.js';

/** Why a turned part is as wide as its cant is long, and as deep as its sheet is thick; undefined of any other extent. */
export function turnedReasons(solved: Solved, id: PartId, axis: Axis): readonly Reason[] | undefined {
  const part = solved.system.planes.part(id);
  if (!part?.on || axis === 'z') return undefined;
  const extent = frameOf(solved, part)?.extent(id, axis);
  const cant = cantUnder(solved.spec, part);
  if (!extent || !cant) return [];
  if (axis === 'y') {
    const text = `${id} is as thick as ${part.material} (${solved.spec.thickness})`;
    return [{ statement: partStatement(part), source: part.source, text, adds: extent }];
  }
  const legs = cant.corner.map((side) => legFrom(cant, side)?.text ?? '');
  const text = `${dimensionOf(axis)} from one end of ${part.on.part}.cant to the other: the root of ${legs[0]}² + ${legs[1]}²`;
  return [{ statement: cant.id, source: cant.source, text, adds: extent }];
}
