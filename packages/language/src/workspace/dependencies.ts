import { type Cancellation, DefaultIndexManager, type LangiumDocument, type URI } from 'langium';
import { importsOf } from '../scope/imports.js';

/**
 * Index that knows which files import which, so that a change far down reaches every file that draws on it: sizes in
 * a cabinet depend on the shop that its import imports. The map is kept while documents are being reset, and names
 * files that do not exist yet, so that their appearing is a change as well.
 */
export class JoineryIndexManager extends DefaultIndexManager {
  private readonly imports = new Map<string, readonly string[]>();
  /** How many files import each. */
  private readonly importers = new Map<string, number>();

  override async updateContent(document: LangiumDocument, cancelToken?: Cancellation.CancellationToken): Promise<void> {
    await super.updateContent(document, cancelToken);
    const uris = importsOf(document).map((uri) => uri.toString());
    this.setImports(document.uri.toString(), uris);
  }

  override remove(uri: URI): void {
    super.remove(uri);
    this.setImports(uri.toString(), []);
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

  /** True if another known file imports this one. */
  isImported(uri: URI): boolean {
    return (this.importers.get(uri.toString()) ?? 0) > 0;
  }

  private setImports(uri: string, imports: readonly string[]): void {
    for (const old of this.imports.get(uri) ?? []) this.importers.set(old, (this.importers.get(old) ?? 0) - 1);
    for (const now of imports) this.importers.set(now, (this.importers.get(now) ?? 0) + 1);
    this.imports.set(uri, imports);
  }
}
