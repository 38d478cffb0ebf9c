import { type Finding, type PartSpec, say, type WorkOrder } from '@dryfit/engine';
import { noSuchPart } from '../checks/no-such-part.js';
import { strangersInJob } from '../checks/not-in-job.js';
import { orderCycles } from '../checks/order-cycle.js';
import type { MadeLine } from '../fits/fits.js';
import type { Job, JobLine, PartRef } from '../generated/ast.js';
import { partsIn, readOrder } from '../interpret/order.js';
import type { Places } from '../interpret/source.js';
import { wordsOfRef } from '../interpret/words.js';

/** What a job asks of the order of its work, as far as it can be read. */
export const ordersOf = (job: Job, places: Places): readonly WorkOrder[] =>
  job.orders.flatMap((order) => readOrder(order, places.of(order)) ?? []);

/** What is wrong with what a job asks of the order of its work. */
export function orderFindings(
  job: Job,
  lines: ReadonlyMap<JobLine, MadeLine | undefined>,
  places: Places,
): readonly Finding[] {
  if (job.orders.length === 0) return [];
  const made = new Map<string, readonly PartSpec[]>();
  for (const line of job.lines) {
    const one = lines.get(line);
    const known = made.get(one?.cabinet.name ?? '') ?? [];
    const parts = one?.variant.result.spec.parts ?? [];
    // Two lines that make one cabinet may differ in how many like parts it has.
    if (one) made.set(one.cabinet.name, [...known, ...parts.filter(({ id }) => !known.some((own) => own.id === id))]);
  }
  return [
    ...strangersInJob(job, places),
    ...job.orders
      .flatMap(partsIn)
      .flatMap(({ parts, cabinet }) =>
        parts.flatMap((ref) => numberless(ref, made.get(cabinet?.ref?.name ?? ''), places)),
      ),
    ...orderCycles(ordersOf(job, places), made),
  ];
}

/** A number that no part of the name has. */
function numberless(ref: PartRef, made: readonly PartSpec[] | undefined, places: Places): readonly Finding[] {
  const name = ref.part?.ref?.name;
  const like = made?.filter(({ kind }) => kind === name) ?? [];
  if (ref.index === undefined || like.length === 0) return [];
  if (like.some(({ index }) => index !== undefined && index === Number(ref.index))) return [];
  const [only] = like;
  const alone = only?.index === undefined;
  return [
    noSuchPart({
      source: places.of(ref),
      message: alone
        ? say`${name ?? ''} is one part and has no number ${ref.index}`
        : say`there is no ${wordsOfRef(ref)}: ${name ?? ''} has the numbers ${like[0]?.index ?? 0} to ${like.at(-1)?.index ?? 0}`,
      cure: alone ? say`Write ${name ?? ''} alone.` : say`Write a number it has, or none to mean all of them.`,
      data: { candidates: like.map(({ id }) => id) },
    }),
  ];
}
