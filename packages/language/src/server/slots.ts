import { Rational } from '@dryfit/engine';
import {
  type Batch,
  type Cell,
  cabinetLabel,
  layout,
  noteLines,
  printText,
  slotRows,
  slotTable,
  type Table,
  toCsv,
  toMarkdown,
} from '@dryfit/output';
import { type Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import type { FittedFile } from '../fits/last-good.js';
import { distinct, formatOf, placerOf } from './places.js';
import type { SlotRow, SlotRows, SlotTableAsked } from './protocol.js';
import type { JoineryServerServices } from './services.js';

/** The slot table of a file's cabinets, row by row with what each is sorted by and where its text is. */
export async function slotRowsOf(
  document: LangiumDocument,
  services: JoineryServerServices,
  token: Cancellation.CancellationToken,
): Promise<SlotRows> {
  const { shared, editor } = services;
  const file = editor.LastGood.ofFile(document);
  const format = formatOf(document);
  const place = placerOf(shared.workspace.LangiumDocuments);
  const batch = batchOf(file.cabinets, document);
  const table = slotTable.make(batch);
  const laid = layout(table, format);
  const version = shared.workspace.TextDocuments.get(document.uri)?.version;
  const rows: SlotRow[] = [];
  for (const [i, { item, milled }] of slotRows(batch).entries()) {
    await interruptAndCheck(token);
    const { fit, spec } = item.result;
    const cells = table.rows[i] as readonly Cell[];
    const sources = [
      ...milled.alike.map(({ joint }) => joint.source),
      ...milled.parts.map((part) => part.source),
      ...spec.statements
        .filter(({ id }) => milled.alike.some(({ joint }) => joint.statement === id))
        .map((s) => s.source),
    ];
    rows.push({
      cells: (laid.rows[i] as readonly string[]).map((text, column) => ({
        text,
        sort: sortKey(cells[laid.kept[column] as number] as Cell, text),
      })),
      shapes: milled.alike.flatMap(({ half }) => half.slots.map((slot) => `slot ${slot.id}`)),
      cabinet: printText(cabinetLabel(fit), format),
      parts: milled.parts.map((part) => part.id),
      places: distinct(sources.map((source) => place(file.now(source)))),
    });
  }
  return {
    version,
    broken: file.broken,
    stale: file.stale,
    workedOut: editor.Settings.now.joinery,
    warning: table.warning,
    columns: laid.headings.map((heading, i) => ({ heading, right: laid.right[i] as boolean })),
    rows,
    notes: noteLines(table, laid, format),
    cautions: table.cautions,
  };
}

/** Rows of the slot table as the command line writes them; undefined if the file has no cabinet of that title. */
export function slotTableOf(
  document: LangiumDocument,
  asked: Pick<SlotTableAsked, 'as' | 'cabinet' | 'rows'>,
  services: JoineryServerServices,
): string | undefined {
  const { cabinets } = services.editor.LastGood.ofFile(document);
  const format = formatOf(document);
  const all = slotRows(batchOf(cabinets, document));
  const wanted = cabinets.filter(
    ({ result }) => asked.cabinet === undefined || printText(cabinetLabel(result.fit), format) === asked.cabinet,
  );
  if (wanted.length === 0) return undefined;
  // Rows are counted over all cabinets of the file; those of one are a stretch of them.
  const first = all.findIndex(({ item }) => wanted.some(({ result }) => result === item.result));
  const table = slotTable.make(batchOf(wanted, document));
  const rows = asked.rows?.map((row) => row - (asked.cabinet === undefined ? 0 : first)) ?? [...table.rows.keys()];
  const there = rows.filter((row) => row in table.rows);
  return asked.as === 'csv' ? csvOf(table, there, format) : toMarkdown(only(table, there), format);
}

function batchOf(cabinets: FittedFile['cabinets'], document: LangiumDocument): Batch {
  const [first] = cabinets;
  return {
    title: cabinets.length === 1 && first ? cabinetLabel(first.result.fit) : [nameOf(document)],
    items: cabinets.map(({ result }) => ({ result, count: 1 })),
    errors: document.diagnostics?.filter(({ severity }) => severity === 1).length ?? 0,
  };
}

const nameOf = ({ uri }: LangiumDocument): string => decodeURIComponent(uri.path.split('/').at(-1) ?? '');

/** Records are those of the whole table, so that a row reads the same however many others are copied with it. */
function csvOf(table: Table, rows: readonly number[], format: Parameters<typeof toCsv>[1]): string {
  const [header = '', ...records] = toCsv(table, format).split('\r\n');
  return [header, ...rows.map((row) => records[row] ?? ''), ''].join('\r\n');
}

const only = (table: Table, rows: readonly number[]): Table => ({
  ...table,
  rows: rows.map((row) => table.rows[row] as readonly Cell[]),
});

/** Lengths sort by mm, a list of lengths by its first, counts by number, words as they are printed. */
function sortKey(cell: Cell, text: string): string | number {
  switch (cell.kind) {
    case 'count':
      return cell.count;
    case 'length':
      return cell.length instanceof Rational ? cell.length.toNumber() : cell.length.value;
    case 'lengths':
      return cell.lengths[0]?.toNumber() ?? 0;
    default:
      return text;
  }
}
