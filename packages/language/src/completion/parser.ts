import { type CompletionParserResult, createParser, LangiumCompletionParser, type LangiumCoreServices } from 'langium';

/**
 * The parser that finds out where a text ends in the grammar. It gives up at the first word it cannot place, since
 * any word may be a name: whatever recovery would go on with could be read as the wrong thing. It is put together when
 * it is first asked: until then a server that starts, and whoever waits for it, can do without.
 */
class JoineryCompletionParser extends LangiumCompletionParser {
  private ready = false;

  constructor(private readonly services: LangiumCoreServices) {
    const { Lexer, ParserConfig, ParserErrorMessageProvider } = services.parser;
    super({
      shared: services.shared,
      LanguageMetaData: services.LanguageMetaData,
      parser: { Lexer, ParserErrorMessageProvider, ParserConfig: { ...ParserConfig, recoveryEnabled: false } },
    } as LangiumCoreServices);
    // Messages nobody sees would list all that could stand here, as many words ahead as this says.
    (this as unknown as { wrapper: { maxLookahead: number } }).wrapper.maxLookahead = 1;
  }

  override parse(input: string): CompletionParserResult {
    if (!this.ready) {
      createParser(this.services.Grammar, this, this.services.parser.Lexer.definition);
      this.finalize();
      this.ready = true;
    }
    return super.parse(input);
  }
}

export const createJoineryCompletionParser = (services: LangiumCoreServices): LangiumCompletionParser =>
  new JoineryCompletionParser(services);
