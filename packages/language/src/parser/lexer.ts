import { DefaultLexer, type LangiumCoreServices, type LexerResult, type TokenizeOptions } from 'langium';
import { balanceBraces } from './braces.js';
import { limitExpressions } from './expression-limits.js';
import { opensStatement } from './statements.js';

type TokenType = LexerResult['tokens'][number]['tokenType'];

/**
 * Lexer in which every word of the language may be a name. A keyword comes out as a token of a second type that
 * matches both the keyword and ID, unless it opens a statement: a name that is missing at the end of a line shall not
 * swallow the statement below.
 */
export class JoineryLexer extends DefaultLexer {
  /** For each keyword, the type that is a name as well. */
  private readonly names = new Map<TokenType, TokenType>();

  constructor(services: LangiumCoreServices) {
    super(services);
    const id = this.tokenTypes.ID;
    for (const [word, type] of Object.entries(this.tokenTypes)) {
      if (id === undefined || !/^[a-zA-Z]+$/.test(word) || type.PATTERN !== word) continue;
      const name = { name: `${word} as a name`, CATEGORIES: [type, id] } as TokenType;
      this.names.set(type, name);
    }
    for (const name of this.names.values()) this.tokenTypes[name.name] = name;
  }

  override tokenize(text: string, options?: TokenizeOptions): LexerResult {
    const result = super.tokenize(text, options);
    const { tokens, errors } = limitExpressions(result.tokens);
    tokens.forEach((token, index) => {
      const name = this.names.get(token.tokenType);
      if (name === undefined || opensStatement(tokens, index)) return;
      token.tokenType = name;
      token.tokenTypeIdx = name.tokenTypeIdx as number;
    });
    const limited = { ...result, tokens, errors: [...result.errors, ...errors] };
    if (options?.mode === 'partial') return limited;
    const balanced = balanceBraces(tokens, { open: this.tokenTypes['{'], close: this.tokenTypes['}'] });
    return { ...limited, tokens: balanced.tokens, errors: [...limited.errors, ...balanced.errors] };
  }
}
