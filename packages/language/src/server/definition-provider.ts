import type { LangiumDocument, MaybePromise } from 'langium';
import { DefaultDefinitionProvider, type LangiumServices } from 'langium/lsp';
import type { DefinitionParams, LocationLink } from 'vscode-languageserver-protocol';
import { linkAt } from '../links/links.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';

const TOP = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Langium's definitions, and the files that imports name. */
export class JoineryDefinitionProvider extends DefaultDefinitionProvider {
  private readonly isKnown: (link: NonNullable<ReturnType<typeof linkAt>>) => boolean;

  constructor(services: LangiumServices) {
    super(services);
    this.isKnown = ({ target }) => services.shared.workspace.LangiumDocuments.hasDocument(target);
  }

  override getDefinition(
    document: LangiumDocument,
    params: DefinitionParams,
  ): MaybePromise<LocationLink[] | undefined> {
    const file = fileOf(document);
    const link = file && linkAt(file, document.textDocument.offsetAt(params.position));
    if (!link) return super.getDefinition(document, params);
    if (!this.isKnown(link)) return undefined;
    const originSelectionRange = rangeOf(document, link);
    return [{ targetUri: link.target.toString(), targetRange: TOP, targetSelectionRange: TOP, originSelectionRange }];
  }
}
