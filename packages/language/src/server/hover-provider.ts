import type { LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { hoverAt } from '../hover/hover.js';
import type { Knowledge } from '../hover/knowledge.js';
import { fileOf } from '../scope/imports.js';
import { knowledgeOf } from './knowledge.js';
import { partPicture } from './part-picture.js';
import type { JoineryServerServices } from './services.js';

/** Turns hovers into what the editor's protocol has for them. */
export class JoineryHoverProvider implements HoverProvider {
  private readonly knowledge: Knowledge;
  private markdown = true;

  constructor(private readonly services: JoineryServerServices) {
    this.knowledge = knowledgeOf(services);
    services.shared.lsp.LanguageServer.onInitialize(({ capabilities }) => {
      const { contentFormat } = capabilities.textDocument?.hover ?? {};
      this.markdown = contentFormat === undefined || contentFormat.includes('markdown');
    });
  }

  getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
    const file = fileOf(document);
    const text = document.textDocument;
    const drawn = this.markdown && this.services.editor.Settings.now.hoverDrawing;
    const knowledge: Knowledge = drawn ? { ...this.knowledge, picture } : this.knowledge;
    const hover = file && hoverAt(file, text.offsetAt(position), knowledge);
    return (
      hover && {
        contents: { kind: this.markdown ? 'markdown' : 'plaintext', value: hover.markdown },
        range: { start: text.positionAt(hover.start), end: text.positionAt(hover.end) },
      }
    );
  }
}

const picture: Knowledge['picture'] = (result, part, units) =>
  partPicture(result, part, { units, unit: units === 'in' });
