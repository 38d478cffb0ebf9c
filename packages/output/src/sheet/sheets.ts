import type { LengthFormat } from '@dryfit/engine';
import type { PlannedJob } from '../plan/tables.js';
import { coverPages } from './cover-page.js';
import { markingPages } from './marking-pages.js';
import type { Page, Paper } from './page.js';
import { setUpPages } from './set-up-page.js';

/** Everything that is printed for a job: its cover, how its parts are marked, then the sheets of its set-ups in their order. */
export function sheetPages(job: PlannedJob, paper: Paper, format: LengthFormat): readonly Page[] {
  return [
    ...coverPages(job, paper, format),
    ...markingPages(job, paper, format),
    ...job.plan.setUps.flatMap((_, i) => setUpPages(job, i, paper, format)),
  ];
}
