import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

const root = fileURLToPath(new URL('../..', import.meta.url));
const wasm = createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm');
const grammarFile = `${root}/syntaxes/joinery.tmLanguage.json`;

/** A run of one colour: where it stands in the text, and its innermost scope. */
export interface Coloured {
  readonly start: number;
  readonly end: number;
  readonly scope: string;
}

/** Colours a text as the editor does: its own tokenizer with our grammar. */
export async function tokenizer(): Promise<(text: string) => readonly Coloured[]> {
  const bytes = readFileSync(wasm);
  await oniguruma.loadWASM(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile),
  });
  const grammar = await registry.loadGrammar('source.joinery');
  if (!grammar) throw new Error('the colours cannot be loaded');
  return (text) => {
    const found: Coloured[] = [];
    let at = 0;
    let state = textmate.INITIAL;
    for (const line of text.split('\n')) {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
      state = ruleStack;
      for (const { startIndex, endIndex, scopes } of tokens)
        found.push({ start: at + startIndex, end: at + Math.min(endIndex, line.length), scope: scopes.at(-1) ?? '' });
      at += line.length + 1;
    }
    return found;
  };
}
