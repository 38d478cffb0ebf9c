import {
  type AstNode,
  type AstNodeLocator,
  type Cancellation,
  CstUtils,
  DefaultIndexManager,
  type LangiumDocument,
  type ReferenceDescription,
  type Stream,
  type URI,
  UriUtils,
} from 'langium';
import { importsOf } from '../scope/imports.js';
import { forEachReference } from '../tree/references.js';

/**
 * Index that knows which files import which, so that a change far down reaches every file that draws on it: sizes in
 * a cabinet depend on the shop that its import imports. The map is kept while documents are being reset, and names
 * files that do not exist yet, so that their appearing is a change as well. Which names stand for what is put down when
 * somebody first asks for it after a change, which typing never does.
 */
export class JoineryIndexManager extends DefaultIndexManager {
  private readonly imports = new Map<string, readonly string[]>();
  /** How many files import each. */
  private readonly importers = new Map<string, number>();

  /** Documents whose names have been linked since they were last put down. */
  private readonly linked = new Map<string, LangiumDocument>();

  override async updateReferences(document: LangiumDocument): Promise<void> {
    this.linked.set(document.uri.toString(), document);
  }

  override removeReferences(uri: URI): void {
    super.removeReferences(uri);
    this.linked.delete(uri.toString());
  }

  override findAllReferences(targetNode: AstNode, astNodePath: string): Stream<ReferenceDescription> {
    for (const [uri, document] of this.linked) {
      const { AstNodeLocator } = this.serviceRegistry.getServices(document.uri).workspace;
      this.referenceIndex.set(uri, descriptionsOf(document, AstNodeLocator));
    }
    this.linked.clear();
    return super.findAllReferences(targetNode, astNodePath);
  }

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

function descriptionsOf(document: LangiumDocument, locator: AstNodeLocator): ReferenceDescription[] {
  const found: ReferenceDescription[] = [];
  forEachReference(document.parseResult.value, ({ reference, container }) => {
    if (reference.error || !reference.$refNode || !('$nodeDescription' in reference) || !reference.$nodeDescription)
      return;
    const { documentUri, path } = reference.$nodeDescription;
    found.push({
      sourceUri: document.uri,
      sourcePath: locator.getAstNodePath(container),
      targetUri: documentUri,
      targetPath: path,
      segment: CstUtils.toDocumentSegment(reference.$refNode),
      local: UriUtils.equals(documentUri, document.uri),
    });
  });
  return found;
}
