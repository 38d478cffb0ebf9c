import { halvesOf, type LengthFormat, type Operation, type Pieces, type SetUp, type Source } from '@dryfit/engine';
import {
  type Laid,
  layout,
  minutes,
  noteLines,
  type PlannedJob,
  planTables,
  printText,
  type SettingFact,
  settingFacts,
} from '@dryfit/output';
import { distinct } from './places.js';
import type { PlannedRow, PlannedSetting, PlannedSetUp, PlanRows, PlanTable, TextPlace } from './protocol.js';

/** Where something stands in the texts as they are now. */
export type NowAt = (source: Source) => TextPlace | undefined;

/** A plan in the words of the command line's tables, with the place in the text of all that it tells. */
export function planRows(
  job: PlannedJob & { readonly name: string; readonly source: Source },
  format: LengthFormat,
  place: NowAt,
): PlanRows {
  const [overview, ...tables] = planTables(job);
  const { plan } = job;
  const places = (sources: readonly (Source | undefined)[]) =>
    distinct(sources.flatMap((source) => (source ? [place(source)] : [])));
  return {
    job: job.name,
    places: places([job.source]),
    warning: overview?.warning,
    change: minutes(plan.change),
    mill: minutes(plan.mill),
    atLeast: minutes(plan.atLeast),
    proven: plan.proven,
    notes: overview ? noteLines(overview, layout(overview, format), format) : [],
    cautions: overview?.cautions ?? [],
    setUps: plan.setUps.map((setUp, i): PlannedSetUp => {
      const table = tables[i];
      const laid = table && layout(table, format);
      const settings = settingFacts(setUp, plan.setUps[i - 1]);
      return {
        settings: settings.map((fact): PlannedSetting => {
          const sources = sourcesOf(fact.what, setUp, job);
          return { name: fact.name, words: printText(fact.words, format), anew: fact.anew, places: places(sources) };
        }),
        changes: settings.flatMap(({ anew, change }) => (anew && change ? [change] : [])).join(', '),
        change: minutes(setUp.change),
        mill: minutes(setUp.mill),
        pieces: setUp.operations.reduce((sum, { count }) => sum + count, 0),
        loads: setUp.loads,
        slots: setUp.slots,
        columns: laid ? columnsOf(laid) : [],
        rows: setUp.operations
          .flatMap((operation) => operation.pieces.map((pieces) => ({ operation, pieces })))
          .map(({ operation, pieces }, row): PlannedRow => {
            const made = madeFor(operation, pieces, job);
            return { keys: made.keys, cells: laid?.rows[row] ?? [], places: places(made.sources) };
          }),
        notes: table && laid ? noteLines(table, laid, format) : [],
      };
    }),
    more: tables.slice(plan.setUps.length).map((table): PlanTable => {
      const laid = layout(table, format);
      return {
        title: printText(table.title, format),
        columns: columnsOf(laid),
        rows: laid.rows,
        notes: noteLines(table, laid, format),
      };
    }),
  };
}

const columnsOf = ({ headings, right }: Laid): PlanTable['columns'] =>
  headings.map((heading, column) => ({ heading, right: right[column] ?? false }));

/** The joints that some pieces of an operation are milled for, with their parts and statements; and names for them. */
function madeFor(operation: Operation, { item, parts }: Pieces, { items }: PlannedJob) {
  const result = items[item]?.result;
  if (!result) return { keys: [], sources: [] };
  const milled = halvesOf(operation, items).filter((one) => one.item === item);
  // Another line of the job with the same cabinet is another one of that name.
  const { name } = result.spec;
  const which = items.slice(0, item).filter((other) => other.result.spec.name === name).length;
  return {
    keys: milled.map(({ joint, half }) => `${name} ${which} ${half.part} ${half.surface} ${joint.id}`),
    sources: [
      ...milled.map(({ joint }) => joint.source),
      ...result.fit.parts.filter(({ id }) => parts.includes(id)).map(({ source }) => source),
      ...result.spec.statements
        .filter(({ id }) => milled.some(({ joint }) => joint.statement === id))
        .map(({ source }) => source),
    ],
  };
}

/** Texts that say why something is set as it is: its entry in the shop first, or the joints that ask for it. */
function sourcesOf(
  what: SettingFact['what'],
  { setting, operations }: SetUp,
  job: PlannedJob,
): readonly (Source | undefined)[] {
  const shop = job.items[0]?.result.spec.shop;
  const joints = operations.flatMap((operation) =>
    operation.pieces.flatMap((pieces) => madeFor(operation, pieces, job).sources.slice(0, 1)),
  );
  switch (what) {
    case 'machine':
    case 'base':
      return [shop?.machines.get(setting.machine)?.source];
    case 'connector':
    case 'depth':
      return [shop?.connectors.get(setting.connector)?.source];
    case 'pattern':
      return setting.pattern === undefined ? joints : [shop?.patterns.get(setting.pattern)?.source];
    case 'pose':
      return [shop?.pose.source, ...joints];
    case 'spacer':
    case 'stop':
      return [...joints, shop?.jig?.source];
    default:
      return joints;
  }
}
