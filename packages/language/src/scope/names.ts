import type { AstNode } from 'langium';
import {
  type Cabinet,
  type Entry,
  type File,
  isParameter,
  isPartLine,
  type Parameter,
  type Part,
} from '../generated/ast.js';
import { remember } from '../remember.js';

/** Anything that has a name of its own. */
export interface Named extends AstNode {
  readonly name: string;
}

/** Two things of one kind and one name in one place. */
export interface Duplicate {
  readonly first: Named;
  readonly again: Named;
}

/** The named things of one kind, by name. */
export type Names<T extends Named = Named> = ReadonlyMap<string, T>;

/** What a file defines itself, by the type of the entry and its name. */
export interface FileNames {
  readonly byType: ReadonlyMap<string, Names>;
  readonly duplicates: readonly Duplicate[];
}

/** What can be named inside a cabinet only. */
export interface CabinetNames {
  readonly parts: Names<Part>;
  readonly parameters: Names<Parameter>;
  readonly duplicates: readonly Duplicate[];
}

const files = new WeakMap<File, FileNames>();
const cabinets = new WeakMap<Cabinet, CabinetNames>();

/** Built once per tree: a text that changes is parsed into another tree. */
export function namesOfFile(file: File): FileNames {
  return remember(files, file, () => collectFile(file));
}

export function namesOfCabinet(cabinet: Cabinet): CabinetNames {
  return remember(cabinets, cabinet, () => collectCabinet(cabinet));
}

function collectFile(file: File): FileNames {
  const byType = new Map<string, Map<string, Named>>();
  const duplicates: Duplicate[] = [];
  for (const entry of file.entries) {
    if (!isNamed(entry)) continue;
    add(
      remember(byType, entry.$type, () => new Map<string, Named>()),
      entry,
      duplicates,
    );
  }
  return { byType, duplicates };
}

function collectCabinet(cabinet: Cabinet): CabinetNames {
  const parts = new Map<string, Part>();
  const parameters = new Map<string, Parameter>();
  const duplicates: Duplicate[] = [];
  for (const item of cabinet.items) {
    if (isParameter(item)) add(parameters, item, duplicates);
    else if (isPartLine(item)) for (const part of item.parts) add(parts, part, duplicates);
  }
  return { parts, parameters, duplicates };
}

function add<T extends Named>(names: Map<string, T>, node: T, duplicates: Duplicate[]): void {
  if (node.name === undefined) return;
  const first = names.get(node.name);
  if (first) duplicates.push({ first, again: node });
  else names.set(node.name, node);
}

/** Entries that a broken text leaves without a name have none to be found by. */
const isNamed = (entry: Entry): entry is Entry & Named => 'name' in entry && entry.name !== undefined;
