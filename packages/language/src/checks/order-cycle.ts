import {
  type Finding,
  namesPart,
  type PartSpec,
  type PartsOf,
  type Related,
  say,
  type Text,
  type WorkOrder,
} from '@dryfit/engine';
import { reporter } from '../findings/report.js';

/** Parts that a job would have milled before themselves. */
export const orderCycle = reporter('order-cycle', 'error');

/** A part of a cabinet of a job. */
interface Piece {
  readonly cabinet: string;
  readonly part: PartSpec;
}

/** What must be milled before what, as one order has it. */
interface Step {
  readonly order: WorkOrder;
  readonly first: ReadonlySet<Piece>;
  readonly next: ReadonlySet<Piece>;
}

/**
 * Orders of a job that cannot be kept with those before them, each with the ring that it closes. The planner leaves the
 * same ones aside.
 * @param made parts of the cabinets of the job, by the name of the cabinet
 */
export function orderCycles(
  orders: readonly WorkOrder[],
  made: ReadonlyMap<string, readonly PartSpec[]>,
): readonly Finding[] {
  const pieces = [...made].flatMap(([cabinet, parts]) => parts.map((part): Piece => ({ cabinet, part })));
  const several = made.size > 1;
  const kept: Step[] = [];
  const found: Finding[] = [];
  for (const step of stepsOf(orders, pieces)) {
    const ring = ringWith(step, kept);
    if (ring === undefined) kept.push(step);
    else found.push(told(step, ring, several));
  }
  return found;
}

/** All that comes late is asked for where the first of it is. */
function stepsOf(orders: readonly WorkOrder[], pieces: readonly Piece[]): readonly Step[] {
  const named = (...parts: readonly PartsOf[]) =>
    new Set(pieces.filter((piece) => parts.some((one) => namesPart(one, piece.cabinet, piece.part))));
  const late = orders.flatMap((order) => (order.kind === 'late' ? [order] : []));
  return orders.flatMap((order): Step[] => {
    if (order.kind === 'before') return [{ order, first: named(order.first), next: named(order.next) }];
    if (order !== late[0]) return [];
    const next = named(...late.map(({ parts }) => parts));
    return [{ order, first: new Set(pieces.filter((piece) => !next.has(piece))), next }];
  });
}

/** A way from something that comes next to something that should come first, by the orders that hold already. */
interface Ring {
  /** From the part that should come first to itself. */
  readonly pieces: readonly Piece[];
  readonly by: readonly WorkOrder[];
}

function ringWith({ first, next }: Step, kept: readonly Step[]): Ring | undefined {
  const from = new Map<Piece, { readonly piece: Piece; readonly by: WorkOrder } | undefined>(
    [...next].map((piece) => [piece, undefined]),
  );
  const waiting = [...next];
  const done = new Set<Step>();
  for (let piece = waiting.shift(); piece !== undefined; piece = waiting.shift()) {
    if (first.has(piece)) return traced(piece, from);
    for (const step of kept) {
      if (done.has(step) || !step.first.has(piece)) continue;
      done.add(step);
      for (const later of step.next) {
        if (from.has(later)) continue;
        from.set(later, { piece, by: step.order });
        waiting.push(later);
      }
    }
  }
  return undefined;
}

function traced(
  end: Piece,
  from: ReadonlyMap<Piece, { readonly piece: Piece; readonly by: WorkOrder } | undefined>,
): Ring {
  const pieces = [end];
  const by: WorkOrder[] = [];
  for (let back = from.get(end); back !== undefined; back = from.get(back.piece)) {
    pieces.unshift(back.piece);
    by.push(back.by);
  }
  // One that is named on both sides is a ring by itself.
  return { pieces: [end, ...pieces], by };
}

function told({ order }: Step, { pieces, by }: Ring, several: boolean): Finding {
  const word = ({ cabinet, part }: Piece): Text => (several ? say`${part.id} of ${cabinet}` : say`${part.id}`);
  const ring = pieces.flatMap((piece, i): Text => (i === 0 ? word(piece) : [' before ', ...word(piece)]));
  return orderCycle({
    source: order.source,
    message: ['this has ', ...ring, ', which cannot be'],
    cure: say`Take out one of the lines that ask for it, or name other parts.`,
    related: [...new Set(by)].map((other): Related => ({ message: say`asked for here`, source: other.source })),
    parts: [...new Set(pieces.map(({ part }) => part.id))],
  });
}
