import { type Finding, list, say } from '@dryfit/engine';
import { reporter } from '../findings/report.js';
import type { Job } from '../generated/ast.js';
import { partsIn } from '../interpret/order.js';
import type { Places } from '../interpret/source.js';

/** An order in a job that names a cabinet which the job does not make. */
export const notInJob = reporter('not-in-job', 'error');

/** What a job asks of the order of its work is about cabinets that it makes. */
export function strangersInJob(job: Job, places: Places): readonly Finding[] {
  const made = new Set(job.lines.flatMap(({ cabinet }) => cabinet?.ref ?? []));
  const names = [...new Set([...made].map(({ name }) => name))].sort();
  return job.orders.flatMap(partsIn).flatMap((parts) => {
    const cabinet = parts.cabinet?.ref;
    if (!cabinet || made.has(cabinet)) return [];
    const others = names.length === 0 ? [] : say`, or name a part of ${list(names, ' or ')}`;
    return [
      notInJob({
        source: places.property(parts, 'cabinet'),
        message: say`${job.name} makes no ${cabinet.name}, so there is nothing of it to be milled`,
        cure: [...say`Write how many are made, as in 1 of ${cabinet.name}`, ...others, '.'],
      }),
    ];
  });
}
