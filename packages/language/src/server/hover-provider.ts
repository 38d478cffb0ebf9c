import type { LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { hoverAt } from '../hover/hover.js';
import type { Knowledge } from '../hover/knowledge.js';
import { fileOf } from '../scope/imports.js';

/** Turns hovers into what the editor's protocol has for them. */
export class JoineryHoverProvider implements HoverProvider {
  constructor(private readonly knowledge: Knowledge) {}

  getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
    const file = fileOf(document);
    const text = document.textDocument;
    const hover = file && hoverAt(file, text.offsetAt(position), this.knowledge);
    return (
      hover && {
        contents: { kind: 'markdown', value: hover.markdown },
        range: { start: text.positionAt(hover.start), end: text.positionAt(hover.end) },
      }
    );
  }
}
