import { Cancellation, interruptAndCheck } from 'langium';
import type { LangiumSharedServices, WorkspaceSymbolProvider } from 'langium/lsp';
import type { WorkspaceSymbol, WorkspaceSymbolParams } from 'vscode-languageserver-protocol';
import { isLibrary } from '../library/library.js';
import { knownIn } from '../outline/everywhere.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';
import { SYMBOL_KINDS } from './symbol-kinds.js';

/** Finds things of all known files by their names, those of the built-in library last and only if something is typed. */
export class JoineryWorkspaceSymbolProvider implements WorkspaceSymbolProvider {
  constructor(private readonly services: LangiumSharedServices) {}

  async getSymbols(
    { query }: WorkspaceSymbolParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<WorkspaceSymbol[]> {
    const matches = (name: string) => this.services.lsp.FuzzyMatcher.match(query, name);
    const own: WorkspaceSymbol[] = [];
    const library: WorkspaceSymbol[] = [];
    for (const document of this.services.workspace.LangiumDocuments.all) {
      await interruptAndCheck(token);
      const file = fileOf(document);
      if (!file || (query === '' && isLibrary(document.uri))) continue;
      for (const { name, kind, inside, ...at } of knownIn(file, matches)) {
        (isLibrary(document.uri) ? library : own).push({
          name,
          kind: SYMBOL_KINDS[kind],
          location: { uri: document.uri.toString(), range: rangeOf(document, at) },
          containerName: inside ?? document.uri.path.slice(document.uri.path.lastIndexOf('/') + 1),
        });
      }
    }
    return [...own, ...library];
  }
}
