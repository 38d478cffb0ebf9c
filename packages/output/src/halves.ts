import type { Fit, FittedJoint, FittedPart, Half } from '@dryfit/engine';
import { byPart, byText } from './print/order.js';

/** Halves of joints that are milled alike into parts that are one and the same piece. */
export interface MilledHalf {
  readonly half: Half;
  readonly joint: FittedJoint;
  readonly part: FittedPart;
  /** Every part it is milled into. */
  readonly parts: readonly FittedPart[];
  /** What meets it there, one for each part or fewer. */
  readonly mates: readonly FittedPart[];
  /** Every half it stands for, with its joint. */
  readonly alike: readonly { readonly half: Half; readonly joint: FittedJoint }[];
}

/**
 * Every half of a cabinet that has slots, ordered by part, surface and position. Halves of one piece about
 * which `told` says the same are folded into one.
 */
export function milledHalves(fit: Fit, told: (half: Half, joint: FittedJoint) => unknown = everything): MilledHalf[] {
  const partOf = new Map(fit.parts.map((part) => [part.id, part]));
  const folded = new Map<string, MilledHalf>();
  for (const joint of [...fit.joints].sort((a, b) => byText(a.id, b.id))) {
    for (const half of joint.halves) {
      const part = partOf.get(half.part);
      const mate = partOf.get(half.part === joint.entering ? joint.host : joint.entering);
      if (part === undefined || half.slots.length === 0) continue;
      const key = JSON.stringify([
        part.same,
        half.turn !== undefined,
        half.surface,
        half.datum,
        half.hand,
        told(half, joint),
      ]);
      const known = folded.get(key);
      folded.set(key, {
        half: known?.half ?? half,
        joint: known?.joint ?? joint,
        part: known?.part ?? part,
        parts: withPart(known?.parts ?? [], part),
        mates: withPart(known?.mates ?? [], mate),
        alike: [...(known?.alike ?? []), { half, joint }],
      });
    }
  }
  return [...folded.values()].sort(inBenchOrder);
}

/** All that is set up or milled for a half. */
function everything(half: Half, joint: FittedJoint): unknown {
  return [
    half.from,
    half.depth,
    half.across,
    half.spacer,
    half.stop,
    half.packer,
    joint.connector?.name,
    half.slots.map((slot) => [slot.fromZero, slot.fromDatum, slot.fromReference]),
  ];
}

function withPart(parts: readonly FittedPart[], part: FittedPart | undefined): readonly FittedPart[] {
  if (part === undefined || parts.includes(part)) return parts;
  return [...parts, part].sort(byPart);
}

function inBenchOrder(a: MilledHalf, b: MilledHalf): number {
  return (
    byPart(a.part, b.part) ||
    byText(a.half.surface, b.half.surface) ||
    a.half.across.compare(b.half.across) ||
    byText(a.joint.id, b.joint.id)
  );
}
