import { UriUtils } from 'langium';
import { isLibrary } from '../../library/library.js';
import { importedUri } from '../../scope/imports.js';
import type { Case, Cure, Fix } from '../fix.js';
import { hiddenUntilRead, READ } from '../support/hidden.js';
import { textAt } from '../support/node.js';
import { lineEnd } from '../support/place.js';

/** Makes the file that an import names, with a list of what is to be written in it. */
export const createImport: Fix = {
  name: 'create-import',
  codes: ['missing-import'],
  mayFollow: {
    ...hiddenUntilRead(READ),
    'unknown-name': 'what is taken from the new file is left to be written there',
    'never-used': 'what is used is known once every import can be read',
    'import-clash': 'two files bring the same name, and one of them is to be chosen',
  },
  *offer(about): Iterable<Cure> {
    const { document } = about;
    const path = textAt(about).slice(1, -1);
    if (!path.endsWith('.joinery')) return;
    const uri = importedUri(document.uri, { path });
    if (!uri || isLibrary(uri)) return;
    yield { title: `Create ${path}`, edits: [], newFiles: [{ uri: uri.toString(), text: firstText(about) }] };
  },
};

/** The units of the importing file, and the names that stand for nothing in it. */
function firstText({ document, services, unit }: Case): string {
  const eol = lineEnd(document.textDocument.getText());
  const wanted = new Set<string>();
  for (const { error, $refText } of document.references) {
    if (!error) continue;
    const type = services.shared.AstReflection.getReferenceType(error.info);
    if (type !== 'Part' && type !== 'Parameter') wanted.add(`${type.toLowerCase()} ${$refText}`);
  }
  const from = UriUtils.basename(document.uri);
  const list = [...wanted].sort().map((one) => `//   ${one}${eol}`);
  const note = list.length === 0 ? '' : `${eol}// What ${from} takes from here is to be written:${eol}${list.join('')}`;
  return `units ${unit}${eol}${note}`;
}
