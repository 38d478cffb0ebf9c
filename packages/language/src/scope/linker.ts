import { type Cancellation, DefaultLinker, interruptAndCheck, type LangiumDocument } from 'langium';
import { isFile } from '../generated/ast.js';
import { forEachReference } from '../tree/references.js';

/** Linker that gives way between the entries of a file, and not at each of its nodes. */
export class JoineryLinker extends DefaultLinker {
  override async link(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
    const root = document.parseResult.value;
    if (!isFile(root)) return super.link(document, cancelToken);
    for (const entry of root.entries) {
      if (cancelToken) await interruptAndCheck(cancelToken);
      forEachReference(entry, (info) => this.doLink(info, document));
    }
  }
}
