import type { LengthFormat, SetUp } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { plural } from '../findings/text.js';
import { whyNow } from '../plan/order.js';
import type { PlannedJob } from '../plan/tables.js';
import { minutes, patternWords, slotsWord, spacerWords, surfaceWords } from '../plan/words.js';
import { printText } from '../print/length.js';
import { atHand } from './at-hand.js';
import { figure } from './cards.js';
import { Flow } from './flow.js';
import { changes } from './footer.js';
import { errorsFound, type Page, type Paper } from './page.js';

/** The cover of a job: what is made, what has to be at hand, which set-ups it takes; as many pages as that fills. */
export function coverPages(job: PlannedJob, paper: Paper, format: LengthFormat): readonly Page[] {
  const title = printText(job.title, format);
  const flow = new Flow(title, paper);
  if (job.errors > 0) flow.line(`${errorsFound(job.errors)}: DO NOT MILL FROM THESE SHEETS`, 5, true);
  flow.line(`Lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}.`, 3.4);
  flow.heading('Cabinets');
  for (const { result, count } of job.items)
    flow.line(`${count} × ${printText(cabinetLabel(result.fit), format)}`, 4.4);
  atHand(flow, job, format);
  const { plan } = job;
  flow.heading(`Set-ups, in this order: ${minutes(plan.change)} min to change, ${minutes(plan.mill)} min to mill`);
  plan.setUps.forEach((setUp, i) => {
    const why = whyNow(job, setUp).map((one) => printText(one, format));
    flow.ticked(setUpWords(setUp, i, format), [changes(setUp.changed, setUp.setting, format), ...why]);
  });
  return flow.pages();
}

/** A set-up in one line. */
export function setUpWords(setUp: SetUp, index: number, format: LengthFormat): string {
  const { setting, operations, slots } = setUp;
  const stop = setting.stop ? `stop ${figure(setting.stop, format)}` : 'no stop';
  const pieces = operations.reduce((sum, { count }) => sum + count, 0);
  const what = `${setting.connector} ${figure(setting.depth, format)} deep, ${slotsWord(setUp)} in the ${surfaceWords(setting)}`;
  const lines = printText(patternWords(setting), format);
  const spacer = printText(spacerWords(setting), format);
  return `${index + 1}.  ${what}, ${lines}, spacer ${spacer}, ${stop}: ${plural(pieces, 'piece')}, ${slots} ${slotsWord(setUp)}`;
}
