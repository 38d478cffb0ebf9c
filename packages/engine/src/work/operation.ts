import type { FitResult, FittedJoint, FittedPart, Half } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { pieceSignature } from '../parts/same.js';
import type { WorkOrder } from '../spec/order.js';
import { type Axis, axisOf } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import { type Needs, needsKey, needsOf } from './needs.js';
import type { Setting } from './setting.js';
import { rolesOf } from './stages.js';
import type { MilledOtherwise } from './ways.js';

/** A cabinet of a job, worked out, and how many of it are made. */
export interface WorkItem {
  readonly result: FitResult;
  /** A whole number ≥ 0. */
  readonly count: number;
  /** Parts that are milled; all of them unless said. */
  readonly only?: ReadonlySet<PartId> | undefined;
  /** Settings that halves are to be milled with, by `halfKey`: as in a plan that other pieces were milled by. */
  readonly kept?: ReadonlyMap<string, Setting> | undefined;
}

/** Names a half of a cabinet. */
export const halfKey = (joint: FittedJoint, half: Half): string => `${half.part}\n${joint.id}`;

/** Pieces of one cabinet that an operation mills. */
export interface Pieces {
  /** Index of the item in the job. */
  readonly item: number;
  readonly parts: readonly PartId[];
  /** Pieces in all: parts times how many cabinets are made. */
  readonly count: number;
}

/** One group of slots, milled alike into pieces that are the same. */
export interface Operation {
  /** In the order of the cabinets, their parts and their surfaces, from 0. */
  readonly number: number;
  /** The first of the pieces, with the half of the joint that is milled into it. */
  readonly part: FittedPart;
  readonly joint: FittedJoint;
  readonly half: Half;
  /** In a plan, what is done otherwise than the joint asks: `half` then tells how it is milled, `asked` how the joint has it. */
  readonly otherwise?: MilledOtherwise | undefined;
  readonly asked?: Half | undefined;
  readonly pieces: readonly Pieces[];
  /** How many pieces in all. */
  readonly count: number;
  /** How much bed the piece takes along the fences' line, mm; undefined while its size is not fixed. */
  readonly along: Rational | undefined;
  /** What a piece weighs, kg; undefined where the material tells no density. */
  readonly weight: Rational | undefined;
  /** What its pieces have to do with the order that the job asks for. */
  readonly roles: readonly string[];
  /** What must be done to its pieces before and only afterwards, beside milling. */
  readonly needs: Needs;
  /** The one setting it is to be milled with, where that is given. */
  readonly kept?: Setting | undefined;
}

/**
 * Every group of slots of a job. Pieces are the same across cabinets, if they are milled alike and the job asks for
 * nothing else of one than of the other.
 */
export function operationsOf(items: readonly WorkItem[], orders: readonly WorkOrder[] = []): readonly Operation[] {
  const found = new Map<string, Draft>();
  items.forEach((item, index) => {
    if (item.count <= 0) return;
    const { fit } = item.result;
    const partOf = new Map(fit.parts.map((part) => [part.id, part]));
    const signatures = new Map<number, string>();
    for (const joint of fit.joints)
      for (const half of joint.halves) {
        const part = partOf.get(half.part);
        if (!part || half.slots.length === 0 || item.only?.has(part.id) === false) continue;
        const signature = signatures.get(part.same) ?? pieceSignature(part) ?? `${index} ${part.id}`;
        signatures.set(part.same, signature);
        const roles = rolesOf(orders, fit.name, part);
        const needs = needsOf(item.result, part, joint, half);
        const key = `${signature}\n${told(joint, half)}\n${roles.join(' ')}\n${needsKey(needs)}`;
        const draft = found.get(key) ?? { part, joint, half, roles, needs, item, pieces: new Map() };
        draft.pieces.set(index, [...(draft.pieces.get(index) ?? []), part.id]);
        found.set(key, draft);
      }
  });
  return [...found.values()].map((draft, number) => finished(draft, number, items));
}

interface Draft {
  readonly part: FittedPart;
  readonly joint: FittedJoint;
  readonly half: Half;
  readonly roles: readonly string[];
  readonly needs: Needs;
  readonly item: WorkItem;
  readonly pieces: Map<number, PartId[]>;
}

function finished(draft: Draft, number: number, items: readonly WorkItem[]): Operation {
  const { part, joint, half, roles, needs, item, pieces } = draft;
  const all = [...pieces].map(([index, parts]): Pieces => {
    const once = [...new Set(parts)];
    return { item: index, parts: once, count: once.length * (items[index]?.count ?? 0) };
  });
  return {
    number,
    part,
    joint,
    half,
    pieces: all,
    count: all.reduce((sum, { count }) => sum + count, 0),
    along: part.extent[axisOf(half.datum)],
    weight: weightOf(item, part),
    roles,
    needs,
    kept: item.kept?.get(halfKey(joint, half)),
  };
}

/** Everything that is set up, held or milled for a half, and where: what is told alike is done alike. */
function told(joint: FittedJoint, half: Half): string {
  const { surface, role, datum, hand, from, across, depth, spacer, stop, packer, mitre } = half;
  const slots = half.slots.map(({ fromZero, fromDatum }) => `${fromZero}/${fromDatum}`).join(' ');
  return [
    ...[surface, role, datum, hand, from.kind, from.side, String(across), String(depth)],
    ...[spacer.kind, String(spacer.width), spacer.stack.join('+'), stop?.end ?? '', String(stop?.at ?? '')],
    ...[String(packer ?? ''), mitre ? `${mitre.outer} ${mitre.angle}` : '', joint.connector?.name ?? ''],
    ...[joint.machine?.name ?? '', joint.pattern ?? '', slots],
  ].join(' ');
}

/** A half that an operation mills, as its joint asks for it, with the index of its cabinet in the job. */
export interface HalfOfJob {
  readonly item: number;
  readonly result: FitResult;
  readonly joint: FittedJoint;
  readonly half: Half;
}

/** Every half that an operation mills, however a plan mills it. */
export function halvesOf(
  { asked, half: own, joint: first, pieces }: Pick<Operation, 'asked' | 'half' | 'joint' | 'pieces'>,
  items: readonly WorkItem[],
): readonly HalfOfJob[] {
  const key = told(first, asked ?? own);
  return pieces.flatMap(({ item, parts }) => {
    const result = items[item]?.result;
    if (!result) return [];
    return result.fit.joints.flatMap((joint) =>
      joint.halves.flatMap((half) =>
        parts.includes(half.part) && told(joint, half) === key ? [{ item, result, joint, half }] : [],
      ),
    );
  });
}

/** mm³ in a m³. */
const CUBIC_METRE = Rational.of(1_000_000_000);

function weightOf({ result }: WorkItem, { extent, material }: FittedPart): Rational | undefined {
  const density = result.spec.shop.materials.get(material)?.density;
  const [x, y, z] = (['x', 'y', 'z'] as const).map((axis: Axis) => extent[axis]);
  return density && x && y && z ? x.mul(y).mul(z).mul(density).div(CUBIC_METRE) : undefined;
}
