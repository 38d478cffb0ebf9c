import type { Half } from '../fit/fit.js';
import { worstOff } from '../joints/spacers.js';
import { stopPlace } from '../joints/stops.js';
import { Rational } from '../number/rational.js';
import type { Changes, Jig, Pattern, Shop } from '../spec/stock.js';
import type { Operation } from './operation.js';

/** How jig and machine stand for a set-up: all that has to be changed before another one can be milled. */
export interface Setting {
  readonly machine: string;
  readonly connector: string;
  readonly depth: Rational;
  /** From the machine's base to the middle of the slot, mm. */
  readonly base: Rational;
  /** Which kind of surface is slotted, and which way its reference looks. */
  readonly pose: { readonly surface: Half['role']; readonly reference: 'up' | 'down' };
  /** Name of the pattern, and the lines that are set, mm from zero. */
  readonly pattern: string | undefined;
  readonly lines: readonly Rational[];
  /** What stands between fence and part: nothing, pieces of the shop's stock, a block made to that width, or marks. */
  readonly spacer:
    | { readonly kind: 'none' | 'mark out' }
    | { readonly kind: 'stock'; readonly stack: readonly Rational[] }
    | { readonly kind: 'cut'; readonly width: Rational };
  /** Where the stop stands, mm from the end it is measured from. */
  readonly stop: Rational | undefined;
}

/** Two settings with one key are the same. */
export function settingKey({ machine, connector, depth, base, pose, lines, pattern, spacer, stop }: Setting): string {
  const between = spacer.kind === 'stock' ? spacer.stack.join('+') : spacer.kind === 'cut' ? String(spacer.width) : '';
  return [
    ...[machine, connector, depth, base, pose.surface, pose.reference, pattern ?? '', lines.join(' ')],
    ...[spacer.kind, between, stop ?? ''],
  ].join('; ');
}

/**
 * Every way an operation can be set up in its shop; the first is what the joint asks for. Another pattern does as well if it
 * has all the lines that are used; another stack of spacers, if it is near enough to the width that is wanted. `stacks`:
 * those that the job uses anyway. `turned`: the reference looks the other way than it does in this shop as a rule.
 */
export function settingsOf(
  { half, joint }: Pick<Operation, 'half' | 'joint'>,
  shop: Shop,
  stacks: readonly (readonly Rational[])[],
  turned = false,
): readonly Setting[] {
  const usual = half.role === 'face' ? shop.pose.face : shop.pose.edge;
  const reference = turned ? (usual === 'up' ? 'down' : 'up') : usual;
  const used = half.slots.map(({ fromZero }) => fromZero);
  const own = patternOf(shop, joint.pattern);
  const stop = half.stop && stopPlace(half.stop);
  const shared = {
    machine: joint.machine?.name ?? '',
    connector: joint.connector?.name ?? '',
    depth: half.depth,
    base: half.stop ? half.across.sub(half.stop.at) : half.across,
    pose: { surface: half.role, reference },
    stop: stop?.isZero() ? undefined : stop,
  };
  const patterns = [
    // Measured from elsewhere, its lines may be none of its pattern's.
    ...(!own || holds(own, used) ? [{ pattern: joint.pattern, lines: own ?? used }] : []),
    ...[...shop.patterns.values()].flatMap((other) => {
      const lines = linesOf(other);
      return other.name !== joint.pattern && lines && holds(lines, used) ? [{ pattern: other.name, lines }] : [];
    }),
  ];
  return patterns.flatMap((pattern) =>
    spacersOf(half, shop.jig, stacks).map((spacer) => ({ ...shared, ...pattern, spacer })),
  );
}

const linesOf = ({ layout }: Pattern): readonly Rational[] | undefined =>
  layout.kind === 'lines' ? layout.lines : undefined;

function patternOf(shop: Shop, name: string | undefined): readonly Rational[] | undefined {
  const pattern = name === undefined ? undefined : shop.patterns.get(name);
  return pattern && linesOf(pattern);
}

const holds = (lines: readonly Rational[], used: readonly Rational[]): boolean =>
  used.every((line) => lines.some((other) => other.equals(line)));

function spacersOf(half: Half, jig: Jig | undefined, stacks: readonly (readonly Rational[])[]): Setting['spacer'][] {
  const { spacer } = half;
  if (spacer.kind === 'none') return [{ kind: 'none' }];
  if (spacer.kind === 'cut') return [{ kind: 'cut', width: spacer.width }];
  if (spacer.kind !== 'stock') return [{ kind: 'mark out' }];
  const within = jig?.within ?? Rational.ZERO;
  const others = stacks.filter(
    (stack) =>
      !sameStack(stack, spacer.stack) && worstOff(Rational.sum(stack).sub(spacer.width), spacer.tolerance).le(within),
  );
  return [spacer.stack, ...others].map((stack) => ({ kind: 'stock', stack }));
}

/** Whether two lists of lengths are the same, one by one. */
export const sameStack = (a: readonly Rational[], b: readonly Rational[]): boolean =>
  a.length === b.length && a.every((piece, i) => piece.equals(b[i] as Rational));

/** What has to be changed between two settings. */
export type ChangeOver = keyof Omit<Changes, 'load' | 'slot' | 'written' | 'source'>;

/** All of them, in the order in which they are changed. */
export const CHANGE_OVERS = ['machine', 'depth', 'base', 'pose', 'pattern', 'spacer', 'stop'] as const;

/** What differs between two settings, in the order in which it is changed; all of it before the first. */
export function changed(from: Setting | undefined, to: Setting): readonly ChangeOver[] {
  const list: ChangeOver[] = [];
  if (from?.machine !== to.machine) list.push('machine');
  if (!from || from.machine !== to.machine || !from.depth.equals(to.depth)) list.push('depth');
  if (!from || from.machine !== to.machine || !from.base.equals(to.base)) list.push('base');
  if (from?.pose.surface !== to.pose.surface || from.pose.reference !== to.pose.reference) list.push('pose');
  if (!from || !sameStack(from.lines, to.lines)) list.push('pattern');
  if (!from || spacerWords(from) !== spacerWords(to)) list.push('spacer');
  if (String(from?.stop) !== String(to.stop)) list.push('stop');
  return list;
}

const spacerWords = ({ spacer }: Setting): string =>
  spacer.kind === 'stock' ? spacer.stack.join('+') : spacer.kind === 'cut' ? `cut ${spacer.width}` : spacer.kind;

/** Minutes of a change. Each thing changed adds its own, so a way round by a third setting is never shorter. */
export function changeMinutes(changes: Changes, from: Setting | undefined, to: Setting): Rational {
  return Rational.sum(changed(from, to).map((what) => changes[what]));
}
