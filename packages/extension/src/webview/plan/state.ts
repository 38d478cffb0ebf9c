import type { PlanRows } from '@dryfit/language/protocol';
import type { Standing } from '../../panel/messages.js';
import { type Base, baseOf } from '../../plan/compare.js';

/** All that a reader of the plan has set, and what it is compared with. */
export interface View {
  readonly uri: string;
  /** Name of the job that is shown; the first of the file if empty. */
  readonly job: string;
  /** The plan of each job as it stood when it was first shown, or when the reader last took it. */
  readonly bases: Readonly<Record<string, Base>>;
}

export const START: View = { uri: '', job: '', bases: {} };

/**
 * The view once a plan has come. The first plan of a job is what later ones are compared with, unless the text is broken
 * or has errors: what is read of such a text is not what anybody would have milled.
 */
export function withPlan(view: View, standing: Standing, plan: PlanRows | undefined, at: number): View {
  // What was compared of another file is of no use; a file that has only moved is the same.
  const now = { ...view, uri: standing.uri };
  if (!plan) return now;
  const { job } = plan;
  if (standing.broken || standing.stale || plan.warning !== undefined || view.bases[job]) return { ...now, job };
  return { ...now, job, bases: { ...view.bases, [job]: baseOf(plan, at) } };
}

/** The plan as it stands is what later ones are compared with. */
export const compareFromNow = (view: View, plan: PlanRows, at: number): View => ({
  ...view,
  bases: { ...view.bases, [plan.job]: baseOf(plan, at) },
});

/** "18:20", or with the day if it was another one. */
export function timeWords(at: number, now: number): string {
  const [then, today] = [new Date(at), new Date(now)];
  const time = then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  if (then.toDateString() === today.toDateString()) return time;
  return `${time} on ${then.toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })}`;
}
