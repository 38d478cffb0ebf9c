import { type LangiumCoreServices, type LangiumParser, type LexerResult, prepareLangiumParser } from 'langium';
import { plainRuleName } from './rule-names.js';
import { atStatement, opensPlacing } from './statements.js';

type Token = LexerResult['tokens'][number];
type TokenType = Token['tokenType'];

/** The parts of the parser underneath that recovery reads and replaces. */
interface Recovering {
  readonly tokVector?: readonly Token[];
  readonly currIdx: number;
  maxLookahead: number;
  readonly RULE_STACK_IDX: number;
  LA(ahead: number): Token;
  SKIP_TOKEN(): Token;
  SAVE_ERROR(error: Error): void;
  tokenMatcher(token: Token, type: TokenType): boolean;
  flattenFollowSet(): TokenType[];
  exportLexerState(): number;
  importLexerState(state: number): void;
  getCurrRuleFullName(): string;
  getHumanReadableRuleStack(): string[];
  errorMessageProvider: { buildMismatchTokenMessage(options: object): string };

  ruleInvocationStateUpdate(shortName: number, fullName: string, index: number): void;
  findReSyncTokenType(): TokenType;
  isInCurrentRuleReSyncSet(type: TokenType): boolean;
  reSyncTo(type: TokenType): Token[];
  tryInRepetitionRecovery(
    rule: (...args: unknown[]) => unknown,
    args: unknown[],
    looksAhead: () => boolean,
    expected: TokenType,
  ): void;
  canTokenTypeBeDeletedInRecovery(type: TokenType): boolean;
  canTokenTypeBeInsertedInRecovery(type: TokenType): boolean;
}

/**
 * Parser that gives up on no more than the statement it cannot read: it goes on at the next line that begins a
 * statement of the block, past any braces that belong to what it gives up, or at the end of the block.
 */
export function createJoineryParser(services: LangiumCoreServices): LangiumParser {
  const parser = prepareLangiumParser(services);
  const { wrapper } = parser as unknown as { wrapper: Recovering };
  recoverByStatements(wrapper, services.parser.Lexer.definition);
  parser.finalize();
  // How far messages look ahead for what was expected: one token is what they say, and more takes long.
  wrapper.maxLookahead = 1;
  return parser;
}

function recoverByStatements(parser: Recovering, types: Record<string, TokenType | undefined>): void {
  const id = types.ID as TokenType;
  const close = types['}'] as TokenType;
  const window = (ahead: number) => [-1, 0, 1, 2].map((offset) => parser.LA(ahead + offset));
  const placing = (ahead: number) => opensPlacing(window(ahead), 1);
  const statement = (ahead: number) => atStatement(parser.LA(ahead), parser.LA(ahead - 1));
  // Where the rules that are open have begun: one that has read nothing cannot go on where it stands.
  const begun: number[] = [];
  const invoke = parser.ruleInvocationStateUpdate;
  parser.ruleInvocationStateUpdate = (shortName, fullName, index) => {
    invoke.call(parser, shortName, fullName, index);
    begun[parser.RULE_STACK_IDX] = parser.currIdx;
  };
  /** How many tokens to leave out, and the type that the rule which goes on there waits for. */
  const resume = (): { skip: number; type: TokenType } => {
    const follows = new Set(parser.flattenFollowSet());
    const least = begun[parser.RULE_STACK_IDX] === parser.currIdx ? 2 : 1;
    let depth = 0;
    for (let ahead = 1; ; ahead++) {
      const token = parser.LA(ahead);
      const type = keyword(token);
      if (isEnd(token)) return { skip: ahead - 1, type };
      if (token.image === '{') depth++;
      else if (token.image === '}' && depth > 0) depth--;
      else if (token.image === '}' && follows.has(close)) return { skip: ahead - 1, type: close };
      else if (depth === 0 && ahead >= least && statement(ahead)) {
        if (follows.has(id) && placing(ahead)) return { skip: ahead - 1, type: id };
        if (type !== id && follows.has(type)) return { skip: ahead - 1, type };
      }
    }
  };

  parser.findReSyncTokenType = () => resume().type;
  // Only what stands in braces, or in a file, is given up: a word deeper down that looks the same is not waited for.
  const inSet = parser.isInCurrentRuleReSyncSet;
  parser.isInCurrentRuleReSyncSet = (type) => {
    const around = parser.getHumanReadableRuleStack().at(-2);
    return (around === undefined || WITH_STATEMENTS.has(plainRuleName(around))) && inSet.call(parser, type);
  };
  parser.reSyncTo = () => {
    const { skip } = resume();
    return Array.from({ length: skip }, () => parser.SKIP_TOKEN());
  };
  // A word that begins the next statement is neither the one too many in this one nor what follows a word it lacks;
  // and braces have been put right already.
  parser.canTokenTypeBeDeletedInRecovery = () => !statement(1);
  parser.canTokenTypeBeInsertedInRecovery = (type) => !statement(1) && type !== close;
  parser.tryInRepetitionRecovery = (rule, args, looksAhead, expected) => {
    const before = parser.exportLexerState();
    const [actual, previous] = [parser.LA(1), parser.LA(0)];
    const follows = new Set(parser.flattenFollowSet());
    const outermost = parser.RULE_STACK_IDX === 0;
    const skipped: Token[] = [];
    const report = () => {
      const ruleName = parser.getCurrRuleFullName();
      const message = parser.errorMessageProvider.buildMismatchTokenMessage({ expected, actual, previous, ruleName });
      parser.SAVE_ERROR(
        Object.assign(new Error(message), {
          name: 'MismatchedTokenException',
          token: actual,
          previousToken: previous,
          resyncedTokens: skipped,
        }),
      );
    };
    for (let depth = 0; ; skipped.push(parser.SKIP_TOKEN())) {
      const token = parser.LA(1);
      if (depth === 0) {
        if (parser.tokenMatcher(token, expected)) return report();
        if (skipped.length > 0 && statement(1)) {
          if (looksAhead.call(parser)) {
            report();
            rule.apply(parser, args);
            return;
          }
          if (follows.has(keyword(token))) break;
        }
        if (token.image === '}' && !outermost) break;
      }
      if (isEnd(token)) break;
      if (token.image === '{') depth++;
      if (token.image === '}' && depth > 0) depth--;
    }
    parser.importLexerState(before);
  };
}

/** Rules that hold statements, facts or settings. */
const WITH_STATEMENTS = new Set([
  ...['File', 'Cabinet', 'Joint', 'Job', 'NotchLine', 'CantLine', 'Allowances'],
  ...['Material', 'Band', 'Machine', 'Connector', 'Pattern', 'Jig', 'Pose', 'Limits', 'Tolerances', 'Changes'],
  'Glue',
]);

const isEnd = (token: Token): boolean => token.tokenType.name === 'EOF';
/** The keyword's own type, also where the word could be a name. */
const keyword = ({ tokenType }: Token): TokenType => tokenType.CATEGORIES?.[0] ?? tokenType;
