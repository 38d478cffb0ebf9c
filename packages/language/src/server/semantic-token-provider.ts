import { Cancellation, type LangiumDocument } from 'langium';
import type { SemanticTokenProvider } from 'langium/lsp';
import {
  type SemanticTokens,
  SemanticTokensBuilder,
  type SemanticTokensDelta,
  type SemanticTokensDeltaParams,
  type SemanticTokensParams,
  type SemanticTokensRangeParams,
} from 'vscode-languageserver';
import { remember } from '../remember.js';
import { fileOf } from '../scope/imports.js';
import { TOKEN_MODIFIERS, TOKEN_TYPES, type Token, tokensOf } from '../tokens/tokens.js';
import type { Stretch } from '../tree/leaves.js';
import { collect, stretchOf } from './convert.js';
import type { JoineryServerServices } from './services.js';

/** Turns what words are into what the editor's protocol has for it: whole files, what is in sight, and what changed. */
export class JoinerySemanticTokenProvider implements SemanticTokenProvider {
  readonly tokenTypes = Object.fromEntries(TOKEN_TYPES.map((type, index) => [type, index]));
  readonly tokenModifiers = Object.fromEntries(TOKEN_MODIFIERS.map((modifier, index) => [modifier, 1 << index]));
  readonly semanticTokensOptions = {
    legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
    full: { delta: true },
    range: true,
  };
  /** What was last told of each open file, to tell only what is other. */
  private readonly told = new Map<string, SemanticTokensBuilder>();

  constructor({ shared }: Pick<JoineryServerServices, 'shared'>) {
    shared.workspace.TextDocuments.onDidClose(({ document }) => this.told.delete(document.uri));
  }

  async semanticHighlight(
    document: LangiumDocument,
    _params: SemanticTokensParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<SemanticTokens> {
    const tokens = await tokensIn(document, token);
    const builder = this.builderOf(document);
    builder.previousResult('');
    this.push(builder, document, tokens);
    return builder.build();
  }

  async semanticHighlightRange(
    document: LangiumDocument,
    { range }: SemanticTokensRangeParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<SemanticTokens> {
    const tokens = await tokensIn(document, token, stretchOf(document, range));
    const builder = new SemanticTokensBuilder();
    this.push(builder, document, tokens);
    return { data: builder.build().data };
  }

  async semanticHighlightDelta(
    document: LangiumDocument,
    { previousResultId }: SemanticTokensDeltaParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<SemanticTokens | SemanticTokensDelta> {
    const tokens = await tokensIn(document, token);
    const builder = this.builderOf(document);
    builder.previousResult(previousResultId);
    this.push(builder, document, tokens);
    return builder.buildEdits();
  }

  private builderOf(document: LangiumDocument): SemanticTokensBuilder {
    return remember(this.told, document.textDocument.uri, () => new SemanticTokensBuilder());
  }

  private push(builder: SemanticTokensBuilder, { textDocument }: LangiumDocument, tokens: readonly Token[]): void {
    for (const { start, end, type, modifiers } of tokens) {
      const { line, character } = textDocument.positionAt(start);
      const bits = modifiers.reduce((sum, modifier) => sum | (this.tokenModifiers[modifier] ?? 0), 0);
      builder.push(line, character, end - start, this.tokenTypes[type] ?? 0, bits);
    }
  }
}

async function tokensIn(
  document: LangiumDocument,
  token: Cancellation.CancellationToken,
  within?: Stretch,
): Promise<Token[]> {
  const file = fileOf(document);
  return file ? collect(tokensOf(file, within), token) : [];
}
