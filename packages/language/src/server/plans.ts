import { type FitResult, type Plan, planWork, type Source, type WorkOrder } from '@dryfit/engine';
import { type Cancellation, DocumentState, interruptAndCheck, type LangiumDocument } from 'langium';
import type { Examination } from '../findings/examine.js';
import { isWhole } from '../fits/last-good.js';
import { formatOf, placerOf } from './places.js';
import { planRows } from './plan-rows.js';
import type { PlannedFile } from './protocol.js';
import { Sequencing, type StartThread } from './sequencing.js';
import type { JoineryServerServices } from './services.js';

/** How long a reader waits for a plan to be proven, ms; what is not by then comes with its bound. */
const BUDGET = 2000;
/** Plans that are kept. */
const MOST_KEPT = 20;

type Jobs = Pick<Examination, 'jobs' | 'findings'>;

interface Kept {
  readonly items: readonly { readonly count: number; readonly result: FitResult }[];
  readonly orders: readonly WorkOrder[];
  readonly plan: Plan;
}

/**
 * Plans of the jobs of files, worked out when they are asked for, and kept while the cabinets of the job and their counts
 * are the same. While a text is broken, the plan is that of the last text that was whole.
 */
export class Plans {
  private readonly kept = new Map<string, Kept>();
  /** What was to be said of a file that a plan was asked of, when it was last whole. */
  private readonly whole = new Map<string, Jobs>();
  private readonly asked = new Set<string>();
  private readonly sequencing: Sequencing;

  constructor(
    private readonly services: JoineryServerServices,
    startThread?: StartThread,
  ) {
    this.sequencing = new Sequencing(startThread);
    const { DocumentBuilder } = services.shared.workspace;
    DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
      const uri = `${document.uri}`;
      if (this.asked.has(uri) && isWhole(document)) this.whole.set(uri, services.editor.Examinations.of(document));
    });
    DocumentBuilder.onUpdate((_, deleted) => {
      for (const uri of deleted) {
        this.whole.delete(`${uri}`);
        this.asked.delete(`${uri}`);
      }
    });
  }

  /** The plan of a job of a document that has been linked; gives way to whatever waits, and stops when it is cancelled. */
  async of(
    document: LangiumDocument,
    wanted: string | undefined,
    token: Cancellation.CancellationToken,
  ): Promise<PlannedFile> {
    const { shared, editor } = this.services;
    const uri = `${document.uri}`;
    this.asked.add(uri);
    const file = editor.LastGood.ofFile(document);
    const before = file.stale ? this.whole.get(uri) : undefined;
    const { jobs, findings } = before ?? editor.Examinations.of(document);
    if (!before && isWhole(document)) this.whole.set(uri, { jobs, findings });
    // Made milder for telling, an error is still one for the saw.
    const errors = findings.filter(({ severity, asFound }) => [severity, asFound].includes('error')).length;
    const job = jobs.find(({ name }) => name === wanted) ?? jobs[0];
    const answer = {
      version: shared.workspace.TextDocuments.get(document.uri)?.version,
      broken: file.broken,
      stale: before !== undefined,
      workedOut: editor.Settings.now.joinery,
      jobs: jobs.map(({ name }) => name),
    };
    if (!job) return answer;
    const items = job.lines.map(({ count, result }) => ({ count, result }));
    const plan = await this.planOf(`${uri}#${job.name}`, items, job.orders, token);
    await interruptAndCheck(token);
    const place = placerOf(shared.workspace.LangiumDocuments);
    const now = (source: Source) => place(before ? file.now(source) : source);
    const planned = { name: job.name, source: job.source, title: [`job ${job.name}`], items, plan, errors };
    return { ...answer, plan: planRows(planned, formatOf(document), now) };
  }

  private async planOf(
    key: string,
    items: Kept['items'],
    orders: Kept['orders'],
    token: Cancellation.CancellationToken,
  ): Promise<Plan> {
    const kept = this.kept.get(key);
    if (kept && sameItems(kept.items, items) && sameOrders(kept.orders, orders)) return kept.plan;
    const { sequence, end } = this.sequencing.for(token, BUDGET);
    try {
      const plan = await planWork(items, { timeLimitMs: BUDGET, clock: () => performance.now(), sequence, orders });
      this.kept.delete(key);
      this.kept.set(key, { items, orders, plan });
      for (const oldest of this.kept.keys()) if (this.kept.size > MOST_KEPT) this.kept.delete(oldest);
      return plan;
    } finally {
      end();
    }
  }
}

/** The same is asked for; where it stands in the text is of no account. */
const sameOrders = (a: Kept['orders'], b: Kept['orders']): boolean => asked(a) === asked(b);
const asked = (orders: Kept['orders']): string =>
  JSON.stringify(orders.map((order) => ({ ...order, source: undefined })));

/** A cabinet that was not worked out anew is the same. */
const sameItems = (a: Kept['items'], b: Kept['items']): boolean =>
  a.length === b.length && a.every(({ count, result }, i) => count === b[i]?.count && result === b[i]?.result);
