import type { FittedPart } from '../fit/fit.js';
import { list, say, type Text } from '../fit/text.js';
import type { FreeGroup } from '../solve/index.js';
import { AXES, type Axis, dimensionOf, highSide, lowSide, SIDES, type Side, thicknessAxis } from '../spec/sides.js';
import type { PartId } from '../spec/spec.js';
import type { Check, CheckContext } from './check.js';
import { byId, once } from './support/alike.js';
import { joined, MOVES, partNames, some } from './support/names.js';

/** Nothing fixes a part's size or place in some direction. */
export const partNotFixed: Check = {
  code: 'part-not-fixed',
  severity: 'error',
  *run(context) {
    for (const loose of looseParts(context)) {
      const [lead] = loose.parts;
      if (!lead) continue;
      yield {
        message: joined(
          loose.groups.map((group) => describe(context, group)),
          '; ',
        ),
        cure: cureFor(context, lead, loose.groups),
        source: lead.source,
        related: jointsOf(context, lead.id),
        about: { parts: loose.parts.map((part) => part.id) },
        data: { axes: loose.groups.map((group) => group.axis), planes: loose.groups.flatMap((group) => group.planes) },
      };
    }
  },
};

/** Planes that move together along one axis, seen from the parts they belong to. */
interface Group {
  readonly axis: Axis;
  /** Parts whose extent is not fixed, and parts of fixed extent whose place is not. */
  readonly sized: readonly PartId[];
  readonly placed: readonly PartId[];
  readonly planes: readonly string[];
  /** Facts that are missing. */
  readonly freedom: number;
  /** The planes move one by one, not together. */
  readonly apart: boolean;
}

/** Free groups by the parts they are about: a part nothing is said of is told once, not once an axis. */
function looseParts(
  context: CheckContext,
): readonly { readonly parts: readonly FittedPart[]; readonly groups: Group[] }[] {
  const byParts = new Map<string, { parts: readonly FittedPart[]; groups: Group[] }>();
  for (const free of context.solved.solution.freeGroups) {
    if (lacksThickness(context, free)) continue;
    const group = groupOf(context, free);
    // Hosts before what stands between them: a size is asked of a side rather than of a shelf.
    const ids = [...hostsFirst(context, group.sized), ...hostsFirst(context, group.placed)];
    const parts = ids.map((id) => context.part(id)).filter((part) => part !== undefined);
    const key = [...ids].sort().join('\n');
    const known = byParts.get(key);
    if (known) addTo(known.groups, group);
    else byParts.set(key, { parts, groups: [group] });
  }
  return [...byParts.values()];
}

/** Planes that a thickness would fix which nobody knows: that its material is unknown, or lacks it, is told elsewhere. */
function lacksThickness({ spec, solved }: CheckContext, free: FreeGroup): boolean {
  const unknowns = new Set(free.unknowns);
  return spec.parts.some(({ id, attitude, material }) => {
    if (spec.shop.materials.has(material)) return false;
    const axis = thicknessAxis(attitude);
    return [lowSide(axis), highSide(axis)].some((side) => unknowns.has(solved.system.planes.side(id, side) ?? -1));
  });
}

function hostsFirst(context: CheckContext, parts: readonly PartId[]): readonly PartId[] {
  const entering = new Set(context.fit.joints.map((joint) => joint.entering));
  const ids = once(parts);
  return [...ids.filter((id) => !entering.has(id)), ...ids.filter((id) => entering.has(id))];
}

function groupOf(context: CheckContext, free: FreeGroup): Group {
  const { system } = context.solved;
  const axis = AXES[free.axis] as Axis;
  const sized: PartId[] = [];
  const placed: PartId[] = [];
  const unknowns = new Set(free.unknowns);
  for (const { id } of context.spec.parts) {
    const own = SIDES.map((side) => system.planes.side(id, side)).filter((n) => n !== undefined && unknowns.has(n));
    if (own.length === 0) continue;
    (context.solved.extent(id, axis) === undefined ? sized : placed).push(id);
  }
  const planes = free.unknowns.map((unknown) => system.unknowns[unknown]).flatMap((u) => (u?.plane ? [u.label] : []));
  return { axis, sized, placed, planes, freedom: free.freedom, apart: false };
}

/** Groups of one axis are told as one. */
function addTo(groups: Group[], group: Group): void {
  const at = groups.findIndex(({ axis }) => axis === group.axis);
  const same = groups[at];
  if (!same) groups.push(group);
  else {
    const planes = [...same.planes, ...group.planes];
    groups[at] = { ...same, planes, freedom: same.freedom + group.freedom, apart: true };
  }
}

function describe(context: CheckContext, { axis, sized, placed, planes, freedom, apart }: Group): Text {
  const what: Text[] = [];
  if (sized.length > 0) what.push(say`the ${dimensionOf(axis)} of ${partNames(context, sized)}`);
  if (placed.length > 0) what.push(say`the place of ${partNames(context, placed)}`);
  const how = !apart && planes.length > 1 ? ' together' : '';
  const moves = say`${some(planes)} can ${apart ? 'each ' : ''}move ${MOVES[axis]}${how}`;

  const missing = freedom > 1 ? say` (${freedom} facts are missing)` : [];
  return say`nothing fixes ${list(what, ', or ')}: ${moves}${missing}`;
}

const TOWARD: Record<Axis, string> = { x: 'right of', y: 'behind', z: 'above' };

function cureFor(context: CheckContext, lead: FittedPart, groups: readonly Group[]): Text {
  const lines = groups.map((group): Text => {
    const { axis } = group;
    const low = lowSide(axis);
    if (group.sized.includes(lead.id)) {
      return say`"${dimensionOf(axis)} … of ${lead.id}" or a fact that fixes ${some(group.planes.filter((plane) => plane.startsWith(`${lead.id}.`)))}`;
    }
    const anchor = anchorOf(context, lead, axis, low);
    return anchor
      ? say`"${low} … ${TOWARD[axis]} ${anchor}.${low}", or make it flush with another part`
      : say`a fact that fixes ${lead.id}.${low}`;
  });
  return say`Write ${joined(lines, '; and ')}.`;
}

/** A part that does not move along the axis, of those the lead stands between if it can be. */
function anchorOf(context: CheckContext, lead: FittedPart, axis: Axis, low: Side): PartId | undefined {
  const hosts = context.fit.joints.filter((joint) => joint.entering === lead.id).map((joint) => joint.host);
  const others = context.fit.parts.map((part) => part.id).filter((id) => id !== lead.id);
  return [...once(hosts), ...hostsFirst(context, others)].find(
    (id) => context.solved.at(id, low) !== undefined && context.solved.extent(id, axis),
  );
}

function jointsOf(context: CheckContext, part: PartId) {
  const [statement] = context.fit.joints
    .filter((joint) => joint.entering === part)
    .sort((a, b) => byId(a.statement, b.statement));
  return statement ? [{ message: say`${part} is joined here`, source: statement.source }] : [];
}
