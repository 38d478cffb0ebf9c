import { type Entry, type File, isCabinet, isPartLine } from '../generated/ast.js';
import type { Stretch } from '../tree/leaves.js';
import { nameStretch } from '../tree/names.js';

/** Something that can be found by its name from anywhere in a workspace. */
export interface Known extends Stretch {
  readonly name: string;
  readonly kind: Entry['$type'] | 'Parameter' | 'Part';
  /** The cabinet it belongs to. */
  readonly inside?: string | undefined;
}

/** Everything a file names that matches: entries, and the parts and parameters of its cabinets. */
export function* knownIn(file: File, matches: (name: string) => boolean): Generator<Known> {
  for (const entry of file.entries) {
    if ('name' in entry) yield* known(entry, entry.$type, undefined, matches);
    if (!isCabinet(entry)) continue;
    for (const item of entry.items) {
      if (item.$type === 'Parameter') yield* known(item, 'Parameter', entry.name, matches);
      if (isPartLine(item)) for (const part of item.parts) yield* known(part, 'Part', entry.name, matches);
    }
  }
}

function* known(
  node: Parameters<typeof nameStretch>[0] & { readonly name?: string },
  kind: Known['kind'],
  inside: string | undefined,
  matches: (name: string) => boolean,
): Generator<Known> {
  const at = node.name === undefined || node.name === '' || !matches(node.name) ? undefined : nameStretch(node);
  if (at && node.name !== undefined) yield { ...at, name: node.name, kind, inside };
}
