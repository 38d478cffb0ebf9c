import {
  type Cut,
  type FittedJoint,
  type FittedPart,
  type Half,
  type LengthFormat,
  outward,
  type Slot,
  type Turn,
} from '@dryfit/engine';
import { printLength } from '../../print/length.js';
import { placeOn, surfaceOn } from '../../print/surface.js';
import type { SceneAlong, SceneTurn, Triple } from '../scene.js';
import { placeOut } from '../turn.js';
import { INDEX, triple } from './figures.js';
import type { Places } from './places.js';

type Opening = Extract<Cut, { slot: string }>;

export function sceneTurn({ origin, along }: Turn): SceneTurn {
  const [x, y] = [along.x.toNumber(), along.y.toNumber()];
  const length = Math.hypot(x, y);
  return { origin: [origin.x.toNumber(), origin.y.toNumber()], along: [x / length, y / length] };
}

/** A slot along a part's cant; it is told in the frame of the turned part and drawn in the part's own. */
export function alongCant(
  part: FittedPart,
  cut: Opening,
  turn: Turn,
  found: { readonly joint: FittedJoint; readonly half: Half; readonly slot: Slot },
  places: Places,
  format: LengthFormat,
): SceneAlong {
  const { joint, half, slot } = found;
  const mate = joint.entering === part.id ? joint.host : joint.entering;
  const print = (length: Slot['fromDatum']) => printLength(length, format, 'table');
  const word = cut.kind === 'disc' ? 'slot' : cut.kind;
  const connector = joint.connector?.name ?? '';
  const datum = placeOn(part, half, half.datum);
  const from = placeOn(part, half, half.from.side);
  return {
    shape: `slot ${cut.slot}`,
    label: `${connector} ${word} ${slot.number} in the ${surfaceOn(part, half)} of ${part.id}, for ${mate}: ${print(slot.fromDatum)} from the ${datum}`,
    places: places.slot(joint.statement, joint.source, [joint.entering, joint.host]),
    kind: cut.kind,
    ...(half.role === 'face' && { surface: half.surface }),
    outline: outlineIn(cut, sceneTurn(turn)),
    joint: joint.id,
    mate,
    connector,
    number: slot.number,
    fromDatum: print(slot.fromDatum),
    datum,
    across: print(slot.fromReference),
    from,
    depth: print(half.depth),
  };
}

/** The four corners of the opening as if it had square ends; it is told by words what it is. */
function outlineIn(cut: Opening, turn: SceneTurn): readonly Triple<number>[] {
  const at = triple(cut.centre);
  const run = INDEX[cut.run];
  const normal = cut.surface === 'bottom' || cut.surface === 'top' ? 2 : 1;
  const across = (3 - run - normal) as 0 | 1 | 2;
  const corner = (along: number, wide: number): Triple<number> => {
    const p: [number, number, number] = [at[0], at[1], at[2]];
    p[run] += (along * cut.length.value) / 2;
    p[across] += (wide * cut.width.toNumber()) / 2;
    return placeOut(turn, p);
  };
  // Whichever way round, as seen from outside.
  const way = outward(cut.surface);
  return [corner(-1, -way), corner(1, -way), corner(1, way), corner(-1, way)];
}
