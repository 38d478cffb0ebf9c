import { type FitResult, planWork } from '@dryfit/engine';
import { cabinetId, type FitJson, fitJson, type PlanJson, planJson } from '@dryfit/output';

const json = <T>(value: T): T => JSON.parse(JSON.stringify(value));

/**
 * What stands in fit.json and plan.json of cabinets that are made together.
 *
 * @param counts how many are made of the first, the second, and so on; over again where there are more cabinets
 */
export async function planned(
  results: readonly FitResult[],
  ...counts: readonly number[]
): Promise<{ readonly fit: FitJson; readonly plan: PlanJson }> {
  // A cabinet made as it is declared comes twice.
  const once = [...new Map(results.map((result) => [cabinetId(result), result])).values()];
  const items = once.map((result, i) => ({ result, count: counts[i % counts.length] ?? 1 }));
  const batch = { title: ['job Test'], items, errors: 0 };
  const fit = fitJson('job', batch, [], () => undefined, { units: 'mm' });
  const plan = planJson({ title: batch.title, items, plan: await planWork(items), errors: 0 });
  return { fit: json(fit), plan: json(plan) };
}
