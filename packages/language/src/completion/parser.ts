import { createParser, LangiumCompletionParser, type LangiumCoreServices } from 'langium';

/**
 * The parser that finds out where a text ends in the grammar. It gives up at the first word it cannot place, since
 * any word may be a name: whatever recovery would go on with could be read as the wrong thing.
 */
export function createJoineryCompletionParser(services: LangiumCoreServices): LangiumCompletionParser {
  const { Lexer, ParserConfig, ParserErrorMessageProvider } = services.parser;
  const parser = new LangiumCompletionParser({
    shared: services.shared,
    LanguageMetaData: services.LanguageMetaData,
    parser: { Lexer, ParserErrorMessageProvider, ParserConfig: { ...ParserConfig, recoveryEnabled: false } },
  } as LangiumCoreServices);
  // Messages nobody sees would list all that could stand here, as many words ahead as this says.
  (parser as unknown as { wrapper: { maxLookahead: number } }).wrapper.maxLookahead = 1;
  createParser(services.Grammar, parser, Lexer.definition);
  parser.finalize();
  return parser;
}
