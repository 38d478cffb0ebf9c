import type { LangiumDocument } from 'langium';
import type { SignatureHelpProvider } from 'langium/lsp';
import type { SignatureHelp, SignatureHelpParams } from 'vscode-languageserver-protocol';
import { fileOf } from '../scope/imports.js';
import type { JoineryServices } from '../services.js';
import { signatureAt } from '../signature/signature.js';

/** Turns the parameters of a cabinet into what the editor's protocol has for them. */
export class JoinerySignatureHelpProvider implements SignatureHelpProvider {
  readonly signatureHelpOptions = { triggerCharacters: ['('], retriggerCharacters: [',', '='] };

  constructor(private readonly services: Pick<JoineryServices, 'parser' | 'joinery'>) {}

  provideSignatureHelp(document: LangiumDocument, { position }: SignatureHelpParams): SignatureHelp | undefined {
    const file = fileOf(document);
    const text = document.textDocument;
    const before = text.getText().slice(0, text.offsetAt(position));
    // A line of a job never reaches back beyond the brace it stands in.
    const line = before.slice(Math.max(before.lastIndexOf('{'), before.lastIndexOf('}'), 0));
    const { tokens } = this.services.parser.Lexer.tokenize(line, { mode: 'partial' });
    const found = file && signatureAt(tokens, (name) => this.services.joinery.Files.find(file, 'Cabinet', name));
    if (!found) return undefined;
    const { label, comment, parameters, active } = found;
    return {
      signatures: [
        {
          label,
          ...(comment !== undefined && { documentation: comment }),
          parameters: parameters.map(({ label: [start, end], about }) => ({
            label: [start, end],
            documentation: { kind: 'markdown', value: about },
          })),
        },
      ],
      activeSignature: 0,
      // Behind the last one, a number that no parameter has: nothing is marked.
      activeParameter: active ?? parameters.length,
    };
  }
}
