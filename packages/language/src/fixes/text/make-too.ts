import { isJob, isLateLine, isMillLine } from '../../generated/ast.js';
import { partsIn } from '../../interpret/order.js';
import type { Cure, Fix } from '../fix.js';
import { writeAfter, writeInto } from '../support/braces.js';
import { nodeOf } from '../support/node.js';

/** Has a job make the cabinet whose parts it puts in order. */
export const makeToo: Fix = {
  name: 'make-too',
  codes: ['not-in-job'],
  mayFollow: { 'order-cycle': 'what its parts wait for was not looked at before' },
  *offer(about): Iterable<Cure> {
    const job = nodeOf(about, isJob);
    const order = nodeOf(about, isLateLine) ?? nodeOf(about, isMillLine);
    const { start } = about.finding.source;
    const parts = order && partsIn(order).find(({ $cstNode: cst }) => cst && cst.offset <= start && start < cst.end);
    const name = parts?.cabinet?.ref?.name;
    if (!job || name === undefined) return;
    const line = `1 of ${name}`;
    const last = job.lines.at(-1);
    yield {
      title: `Make one ${name} in ${job.name}`,
      edits: [last ? writeAfter(last, line) : writeInto(job, line)],
      preferred: true,
    };
  },
};
