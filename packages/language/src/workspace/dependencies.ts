import { type Cancellation, DefaultIndexManager, type LangiumDocument, type URI } from 'langium';
import { importsOf } from '../scope/imports.js';

/**
 * Index that knows which files import which, so that a change far down reaches every file that draws on it: sizes in
 * a cabinet depend on the shop that its import imports. The map is kept while documents are being reset, and names
 * files that do not exist yet, so that their appearing is a change as well.
 */
export class JoineryIndexManager extends DefaultIndexManager {
  private readonly imports = new Map<string, readonly string[]>();

  override async updateContent(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
    await super.updateContent(document, cancelToken);
    this.imports.set(
      document.uri.toString(),
      importsOf(document).map((uri) => uri.toString()),
    );
  }

  override remove(uri: URI): void {
    super.remove(uri);
    this.imports.delete(uri.toString());
  }

  override isAffected(document: LangiumDocument, changedUris: Set<string>): boolean {
    const seen = new Set<string>([document.uri.toString()]);
    for (const uri of seen) {
      for (const imported of this.imports.get(uri) ?? []) {
        if (changedUris.has(imported)) return true;
        seen.add(imported);
      }
    }
    return false;
  }
}
