import { type GrammarAST, LangiumParserErrorMessageProvider, type LexerResult } from 'langium';
import { wordsInside } from './grammar-words.js';
import { plainRuleName } from './rule-names.js';

type Token = LexerResult['tokens'][number];
type TokenType = Token['tokenType'];

/** What a name is, by the rule that waits for it. */
const NAMES: Record<string, string> = {
  Cabinet: 'a name for the cabinet',
  Job: 'a name for the job',
  Material: 'a name for the material',
  Band: 'a name for the band',
  Machine: 'a name for the machine',
  Connector: 'a name for the connector',
  Pattern: 'a name for the pattern',
  Jig: 'a name for the jig',
  Glue: 'a name for the glue',
  Parameter: 'a name for the parameter',
  Part: 'a name for the part',
  PartLine: 'a material',
  PartRef: 'a part',
  BandLine: 'a band',
  ConnectFact: 'a connector',
  JobLine: 'a cabinet',
  PartsOf: 'a cabinet of the job',
  Argument: 'a parameter of the cabinet',
  Layers: 'a material',
  CheckName: 'the name of a check',
};

/** What a text in quotes is, by the rule that waits for it. */
const TEXTS: Record<string, string> = {
  Import: 'a path in quotes, such as "shop.joinery"',
  ConnectFact: 'the reason in quotes, such as "glued"',
  Silence: 'the reason in quotes',
};

/** What is expected where a rule has a choice. */
const CHOICES: Record<string, string> = {
  Operand: 'a length',
  Side: 'a side (`left`, `right`, `front`, `rear`, `bottom` or `top`)',
  ReferenceFace: 'a side, `outer` or `inner`',
  Attitude: '`upright`, `level` or `facing`',
  Extent: '`width`, `depth` or `height`',
  Toward: '`above`, `below`, `behind`, `in front of`, `left of` or `right of` after the distance',
  Joint: '`between` or `to` after the part that enters',
  DimensionLine: '`of`, `over`, `between` or `from` after the length',
  SideFact: '`flush with`, `set back`, `proud`, `against` or a distance after the side',
  AcrossFact: '`at` a distance or `centred in thickness`',
  ConnectFact: 'a connector and its pattern, or `none` and the reason in quotes',
  LoadLine: '`on` or `at the middle of` after the load',
  LoadUnit: '`kg`, `lb`, `kg/m`, `lb/ft`, `kg/m2` or `lb/ft2` after the figure',
  RollLength: '`m` or `ft` after the figure',
  PackMass: '`g`, `kg`, `oz` or `lb` after the figure',
  Spread: '`g/m2` or `oz/ft2` after the figure',
  Tolerance: '`±`, or `plus` and `minus`',
  Reckoning: '`worst case` or `root sum square`',
  Shape: '`biscuit`, `loose tenon` or `dowel`',
  EitherWay: '`down` or `up`',
  FenceEnd: '`left` or `right`',
  Placing: 'a dot and a side, `centred` or `openings` after the part',
};

/** What stands in a rule's braces. */
const CONTENTS: Record<string, string> = {
  Cabinet: 'no statement of a cabinet; one begins with the name of a part, or with',
  Joint: 'no fact of a joint; one begins with',
  Job: 'no line of a job; one begins with how many are made, as in `2 of Bookcase`, or with',
  Pattern: 'no setting of a pattern, which takes',
  Material: 'no setting of a material, which takes',
  Band: 'no setting of a band, which takes',
  Machine: 'no setting of a machine, which takes',
  Connector: 'no setting of a connector, which takes',
  Jig: 'no setting of a jig, which takes',
  Pose: 'no setting of a pose, which takes',
  Limits: 'no setting of the limits, which take',
  Tolerances: 'none of the tolerances, which are',
  Changes: 'none of the changes, which are',
  Glue: 'no setting of a glue, which takes',
  CantLine: 'not one of the two sizes of a cant, which begin with',
  NotchLine: 'not one of the two sizes of a notch, which begin with',
  File: 'not the beginning of an entry; one begins with',
};

/** Units that lengths are not written in, and ways of writing those they are. */
const OTHER_UNITS = /^(cm|dm|m|ft|foot|feet|inch|inches|yd|yard|yards|millimetres?|centimetres?|met(er|re)s?)$/i;

/** Says in the trade's words what a statement lacks. */
export class JoineryParserErrorMessageProvider extends LangiumParserErrorMessageProvider {
  constructor(private readonly grammar: () => GrammarAST.Grammar) {
    super();
  }

  override buildMismatchTokenMessage(options: {
    expected: TokenType;
    actual: Token;
    previous: Token;
    ruleName: string;
  }): string {
    const { expected, actual, previous } = options;
    const rule = plainRuleName(options.ruleName);
    if (expected.name === 'EOF') return this.wrongContent('File', actual);
    if (rule === 'PartLine' && expected.name === 'to' && !isNumber(previous))
      return `a name is one word, and \`${previous.image}\` is one too many; parts that are alike are written as \`parts shelf 1 to 3\``;
    if (isNumber(previous) && isNumber(actual))
      return `a comma is missing between \`${previous.image}\` and \`${actual.image}\``;
    if (expected.name === '}' && rule in CONTENTS && !isEnd(actual)) return this.wrongContent(rule, actual);
    return sentence(wordsFor(expected, rule), previous, actual);
  }

  override buildNoViableAltMessage(options: {
    expectedPathsPerAlt: TokenType[][][];
    actual: Token[];
    previous: Token;
    customUserDescription: string;
    ruleName: string;
  }): string {
    const rule = plainRuleName(options.ruleName);
    const actual = options.actual[0] as Token;
    if (OTHER_UNITS.test(options.previous.image))
      return `\`${options.previous.image}\` is no unit here: lengths are in mm or in, as in \`70mm\` and \`2 3/4"\``;
    if (rule === 'CabinetItem') return this.wrongContent('Cabinet', actual);
    if (rule === 'Fact') return this.wrongContent('Joint', actual);
    if (rule === 'Entry') return this.wrongContent('File', actual);
    if (rule === 'ConnectFact' && actual.image === 'none') return `expected ${TEXTS.ConnectFact} after \`none\``;
    const first = options.expectedPathsPerAlt.flatMap((paths) => paths.map((path) => path[0]));
    const words = [...new Set(first.filter((type) => type !== undefined))].map((type) => wordsFor(type, rule));
    return sentence(CHOICES[rule] ?? or(words), options.previous, actual);
  }

  override buildNotAllInputParsedMessage({ firstRedundant }: { firstRedundant: Token; ruleName: string }): string {
    return this.wrongContent('File', firstRedundant);
  }

  private wrongContent(rule: string, actual: Token): string {
    const words = wordsInside(this.grammar(), rule).map((word) => `\`${word}\``);
    return [`${found(actual)} is ${CONTENTS[rule]}`, or(words)].filter((text) => text !== '').join(' ');
  }
}

/** Words that join names, and so seldom are one. */
const JOINING = /^(and|between|by|from|of|over|to|with) as a name$/;

function sentence(expected: string, previous: Token, actual: Token): string {
  if (/^x\d/.test(actual.image)) return `${found(actual)} reads as a name: write \`x ${actual.image.slice(1)}\``;
  const read = JOINING.test(previous.tokenType.name) ? ` (\`${previous.image}\` before it was read as a name)` : '';
  const after = previous.image === '' || expected.includes('after') ? '' : ` after \`${previous.image}\``;
  return `expected ${expected}${after}, found ${found(actual)}${read}`;
}

function wordsFor(type: TokenType, rule: string): string {
  switch (type.name) {
    case 'ID':
      return NAMES[rule] ?? 'a name';
    case 'NUMBER':
      return rule === 'JobLine' ? 'how many' : 'a number';
    case 'STRING':
      return TEXTS[rule] ?? 'a text in quotes';
    default:
      return `\`${type.name}\``;
  }
}

const found = (token: Token): string => (isEnd(token) ? 'the end of the file' : `\`${token.image}\``);
const isNumber = (token: Token): boolean => token.tokenType.name === 'NUMBER';
const isEnd = (token: Token): boolean => token.tokenType.name === 'EOF';

function or(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
