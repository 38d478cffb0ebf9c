import { libraryHolding } from '../../library/library.js';
import { fileOf } from '../../scope/imports.js';
import { namesOfFile } from '../../scope/names.js';
import type { Case, Cure, FileEdit, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { pathTo } from '../support/paths.js';
import { lineEnd } from '../support/place.js';

/** Imports a file of the workspace, or a part of the built-in library, that has what is named. */
export const importIt: Fix = {
  name: 'import-it',
  codes: ['unknown-name'],
  most: 3,
  mayFollow: {
    ...hiddenUntilRead(READ),
    'import-clash': 'two files bring the same name, and one of them is to be chosen',
    'never-measured': 'the sheet is known now, and has no measured thickness',
  },
  *offer(about): Iterable<Cure> {
    const { type, name } = about.finding.data ?? {};
    if (typeof type !== 'string' || typeof name !== 'string') return;
    for (const path of pathsOf(about, type, name))
      yield { title: `Import "${path}", which has ${name}`, edits: [importLine(about, path)] };
  },
};

function* pathsOf({ document, services }: Case, type: string, name: string): Iterable<string> {
  const library = libraryHolding(type, name);
  const others = services.shared.workspace.LangiumDocuments.all
    .filter(({ uri }) => uri.toString() !== document.uri.toString())
    .flatMap((other) => {
      const file = fileOf(other);
      const path = file && namesOfFile(file).byType.get(type)?.has(name) ? pathTo(document.uri, other.uri) : undefined;
      return path === undefined ? [] : [path];
    })
    .toArray();
  yield* others.sort((a, b) => a.length - b.length || (a < b ? -1 : 1));
  if (library !== undefined) yield `dryfit:${library}`;
}

/** Behind the other imports, else behind the units, else at the top. */
function importLine({ file, document }: Case, path: string): FileEdit {
  const text = document.textDocument.getText();
  const eol = lineEnd(text);
  const line = `import "${path}"`;
  const last = (file.imports.at(-1) ?? file.units.at(-1))?.$cstNode?.end;
  const uri = document.uri.toString();
  if (last !== undefined) return { uri, start: last, end: last, text: `${eol}${line}` };
  const start = file.entries[0]?.$cstNode?.offset ?? 0;
  return { uri, start, end: start, text: `${line}${eol}` };
}
