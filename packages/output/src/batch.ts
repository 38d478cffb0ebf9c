import type { Fit, FitResult, FittedPart, Text } from '@dryfit/engine';
import { byPart, byText } from './print/order.js';
import { type Cell, type Table, text } from './table/table.js';

/** A cabinet and how many of it are made. */
export interface Item {
  readonly result: FitResult;
  readonly count: number;
}

/** What a set of tables is printed for: one cabinet, or all the cabinets of a job. */
export interface Batch {
  readonly title: Text;
  readonly items: readonly Item[];
  /** Errors found in what these cabinets are made from; any at all makes every table warn. */
  readonly errors: number;
}

/** A table, one file each in the folder `tables`. */
export interface TableMaker {
  /** File name without its ending, and what the command line calls it. */
  readonly name: string;
  /** Tables are listed in the order of their ranks. */
  readonly rank: number;
  readonly make: (batch: Batch) => Table;
}

/** Name of a cabinet with the parameters its job overrides: "Periodicals (wide 450, deep 320)". */
export function cabinetLabel(fit: Pick<Fit, 'name' | 'parameters'>): Text {
  const given = fit.parameters.filter((parameter) => parameter.overridden);
  if (given.length === 0) return [fit.name];
  const label: Text[number][] = [`${fit.name} (`];
  given.forEach((parameter, i) => {
    label.push(`${i > 0 ? ', ' : ''}${parameter.name} `);
    label.push(parameter.count ? parameter.value.toString() : parameter.value);
  });
  return [...label, ')'];
}

/** Heading of a table: what it lists, and for which cabinet or job. */
export function titleOf(what: string, batch: Batch): Text {
  return [`${what}: `, ...batch.title];
}

/** The cell that says which cabinet a row belongs to; empty where there is only one. */
export function cabinetCell(batch: Batch, item: Item): Cell {
  return text(batch.items.length > 1 ? cabinetLabel(item.result.fit) : '');
}

/** The sentence over a table of a cabinet that has errors. */
export function warningOf(batch: Batch): string | undefined {
  if (batch.errors === 0) return undefined;
  return `${batch.errors} ${batch.errors === 1 ? 'error was' : 'errors were'} found; do not cut or mill from this table.`;
}

/** Parts that are one and the same piece, interchangeable once made. */
export interface Piece {
  /** At least one, in order of their names. */
  readonly parts: readonly FittedPart[];
  readonly first: FittedPart;
}

/**
 * The parts of a cabinet folded into pieces, in the order of their first names. A piece may be turned over to
 * stand in another place, where its sides have other names: parts for which `told` says different things are
 * kept apart, so that no row speaks of a left edge that is another part's right one.
 */
export function pieces(fit: Fit, told: (part: FittedPart) => unknown): Piece[] {
  const folded = new Map<string, FittedPart[]>();
  for (const part of [...fit.parts].sort(byPart)) {
    const key = JSON.stringify([part.same, told(part)]);
    const alike = folded.get(key);
    if (alike) alike.push(part);
    else folded.set(key, [part]);
  }
  return [...folded.values()].map((parts) => ({ parts, first: parts[0] as FittedPart }));
}

/** Items in the order of their names and parameters, so that the order of statements changes nothing. */
export function sortedItems(batch: Batch): readonly Item[] {
  const key = (item: Item) =>
    [item.result.fit.name, ...item.result.fit.parameters.map((p) => `${p.name}=${p.value}`)].join('\n');
  return [...batch.items].sort((a, b) => byText(key(a), key(b)));
}
