import { UriUtils } from 'langium';
import { nearest } from '../../findings/nearest.js';
import { isLibrary, libraryNames } from '../../library/library.js';
import type { Case, Cure, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { textAt } from '../support/node.js';
import { pathTo } from '../support/paths.js';

/** Puts the path of a file that is there in the place of one that is not. */
export const importPath: Fix = {
  name: 'import-path',
  codes: ['missing-import'],
  most: 3,
  mayFollow: {
    ...hiddenUntilRead(READ),
    'unknown-name': 'names are looked for once every import can be read',
    'import-clash': 'two files bring the same name, and one of them is to be chosen',
    'never-used': 'what is used is known once every import can be read',
  },
  *offer(about): Iterable<Cure> {
    const { finding } = about;
    const path = textAt(about).slice(1, -1);
    for (const found of pathsNear(about, path)) {
      yield { title: `Import "${found}"`, edits: [{ ...finding.source, text: `"${found}"` }] };
    }
  },
};

function pathsNear({ document, services }: Case, path: string): readonly string[] {
  if (path.startsWith('dryfit:')) {
    const names = libraryNames.map((name) => `dryfit:${name}`);
    return [nearest(path, names), ...names].filter((name) => name !== undefined);
  }
  const paths = services.shared.workspace.LangiumDocuments.all
    .filter(({ uri }) => !isLibrary(uri) && uri.toString() !== document.uri.toString())
    .map(({ uri }) => pathTo(document.uri, uri))
    .filter((one) => one !== undefined)
    .toArray();
  const last = path.split('/').at(-1) ?? path;
  const named = paths.filter((other) =>
    [last, `${last}.joinery`].includes(UriUtils.basename(UriUtils.joinPath(document.uri, other))),
  );
  const near = nearest(path, paths);
  const nearName = paths.find(
    (other) =>
      other.split('/').at(-1) ===
      nearest(
        last,
        paths.map((one) => one.split('/').at(-1) ?? one),
      ),
  );
  return [...new Set([...named, near, nearName].filter((one) => one !== undefined))];
}
