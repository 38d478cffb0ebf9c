import { type Solved, solveSpec } from '../../sizes/solved.js';
import type { Conflict } from '../../solve/index.js';
import { AXES, type Axis, axisOf, axisOfDimension, highSide, lowSide, thicknessAxis } from '../../spec/sides.js';
import type { PartId, Spec, Statement } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';
import { once } from './alike.js';
import { perContext } from './remember.js';

/** Two parts as a statement names them, the one that should stand left, in front or below first. */
export interface Order {
  readonly statement: Statement;
  readonly low: PartId;
  readonly high: PartId;
  readonly axis: Axis;
}

/** A statement that names two parts in the wrong order. */
export interface Backwards extends Order {
  /** Parts that come out with a negative extent because of it. */
  readonly parts: readonly PartId[];
  /** Statements that disagree because of it. */
  readonly conflict?: Conflict | undefined;
}

/** Statements that name their hosts in the wrong order, as far as sizes or disagreements show it. */
export const backwards = perContext((context): readonly Backwards[] =>
  mayBe(context) ? [...bySize(context), ...byConflict(context)] : [],
);

const mayBe = ({ fit, solved }: CheckContext): boolean =>
  fit.parts.some(({ extent }) => AXES.some((axis) => (extent[axis]?.sign() ?? 1) <= 0)) ||
  solved.solution.conflicts.length > 0;

/** Disagreements that turning two names round would settle. */
export const explainedConflicts = (context: CheckContext): ReadonlySet<Conflict> =>
  new Set(backwards(context).flatMap(({ conflict }) => conflict ?? []));

/** Parts whose extent on an axis is nothing or less. */
export const notPositive = (solved: Solved, axis: Axis): readonly PartId[] =>
  once(solved.spec.parts.filter((part) => (solved.extent(part.id, axis)?.sign() ?? 1) <= 0).map((part) => part.id));

/** Every order of two parts that a spec states. */
export function ordersOf(spec: Spec): readonly Order[] {
  const parts = new Map(spec.parts.map((part) => [part.id, part]));
  const statements = [...spec.statements].sort((a, b) => (a.id < b.id ? -1 : 1));
  return statements.flatMap((statement): Order[] => {
    if (statement.kind === 'dimension') {
      const { form } = statement;
      if (form.kind !== 'over' && form.kind !== 'between') return [];
      return [{ statement, low: form.low, high: form.high, axis: axisOfDimension(statement.dimension) }];
    }
    // The parts beside a turned one stand at the ends of its cant, whichever is named first.
    if (statement.kind !== 'joint' || statement.entering.some((id) => parts.get(id)?.on)) return [];
    return statement.between.flatMap(({ low, high }): Order[] => {
      const host = parts.get(low.part);
      if (!host) return [];
      const axis = low.side ? axisOf(low.side) : thicknessAxis(host.attitude);
      return [{ statement, low: low.part, high: high.part, axis }];
    });
  });
}

/**
 * A part comes out negative between hosts of which the one named first lies wholly beyond the other. If more
 * statements name the two that way than the other way round, it is the others that are backwards.
 */
function bySize(context: CheckContext): readonly Backwards[] {
  const { solved } = context;
  const orders = ordersOf(context.spec);
  const found: Backwards[] = [];
  for (const axis of AXES) {
    const negative = new Set(notPositive(solved, axis));
    if (negative.size === 0) continue;
    const wrong = orders.filter((order) => order.axis === axis && liesBeyond(solved, order));
    const suspects = wrong.filter(
      ({ statement }) => statement.kind === 'joint' && statement.entering.some((id) => negative.has(id)),
    );
    const told = new Set<string>();
    for (const order of suspects) {
      const agreeing = orders.filter((other) => sameOrder(other, order));
      const against = orders.filter((other) => sameOrder(other, turned(order)));
      const guilty = agreeing.length > against.length && against.length > 0 ? against : [order];
      for (const one of guilty) {
        const key = `${one.statement.id}\n${one.low}\n${one.high}`;
        if (told.has(key)) continue;
        told.add(key);
        const at = guilty[0] === order ? [order] : agreeing;
        const parts = at
          .flatMap(({ statement }) => (statement.kind === 'joint' ? statement.entering : []))
          .filter((id) => negative.has(id));
        found.push({ ...one, parts: once(parts) });
      }
    }
  }
  return found;
}

const turned = (order: Order): Order => ({ ...order, low: order.high, high: order.low });

const sameOrder = (a: Order, b: Order): boolean => a.axis === b.axis && a.low === b.low && a.high === b.high;

/** The part named first lies wholly on the far side of the other. */
function liesBeyond(solved: Solved, { low, high, axis }: Order): boolean {
  const { planes } = solved.system;
  const a = planes.side(low, lowSide(axis));
  const b = planes.side(high, highSide(axis));
  if (a === undefined || b === undefined || low === high) return false;
  const gap = solved.solution.difference(a, b);
  return gap.status === 'determined' && gap.value !== undefined && gap.value.sign() >= 0;
}

/** Most orders that are tried the other way round for one disagreement. */
const MOST_TRIES = 8;

/** A disagreement that goes, with every size above nothing, when one statement's two names are turned round. */
function byConflict(context: CheckContext): readonly Backwards[] {
  const { conflicts } = context.solved.solution;
  if (conflicts.length === 0) return [];
  const orders = ordersOf(context.spec);
  return conflicts.flatMap((conflict): Backwards[] => {
    const axis = AXES[conflict.axis] as Axis;
    const within = orders.filter((order) => order.axis === axis && conflict.statements.includes(order.statement.id));
    const healing = within.slice(0, MOST_TRIES).filter((order) => {
      const again = solveSpec(withTurned(context.spec, order));
      return again.solution.conflicts.length < conflicts.length && notPositive(again, axis).length === 0;
    });
    const votes = (order: Order): number => orders.filter((other) => sameOrder(other, order)).length;
    const odd = healing.filter((order) => votes(order) < votes(turned(order)));
    const joints = healing.filter(({ statement }) => statement.kind === 'joint');
    const only = [healing, odd, joints].find((choice) => choice.length === 1)?.[0];
    return only ? [{ ...only, parts: [], conflict }] : [];
  });
}

/** The spec with the two names of one statement the other way round. */
function withTurned(spec: Spec, { statement: turn, low, high }: Order): Spec {
  const statements = spec.statements.map((statement): Statement => {
    if (statement.id !== turn.id) return statement;
    if (statement.kind === 'dimension' && (statement.form.kind === 'over' || statement.form.kind === 'between')) {
      return { ...statement, form: { kind: statement.form.kind, low: high, high: low } };
    }
    if (statement.kind !== 'joint') return statement;
    const between = statement.between.map((pair) =>
      pair.low.part === low && pair.high.part === high ? { low: pair.high, high: pair.low } : pair,
    );
    return { ...statement, between };
  });
  return { ...spec, statements };
}
