import type { LangiumDocument } from 'langium';
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver-protocol';
import { linksOf } from '../links/links.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';

/** Turns the paths of imports into links. */
export class JoineryDocumentLinkProvider implements DocumentLinkProvider {
  getDocumentLinks(document: LangiumDocument): DocumentLink[] {
    const file = fileOf(document);
    if (!file) return [];
    return linksOf(file).map(({ target, tip, ...at }) => ({
      range: rangeOf(document, at),
      target: target.toString(),
      tooltip: tip,
    }));
  }
}
