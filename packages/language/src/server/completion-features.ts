import { AstUtils, GrammarAST, GrammarUtils } from 'langium';
import { findNextFeatures, type LangiumServices, type NextFeature } from 'langium/lsp';
import { unitSetApart } from '../completion/context.js';
import type { Feature } from '../completion/offer.js';
import { asTyped } from '../completion/tokens.js';

type Services = Pick<LangiumServices, 'Grammar' | 'parser'>;

/**
 * What the grammar takes behind a text that holds no more than open blocks and a statement begun.
 * @param isName true for a word of the language that something is called
 */
export function featuresAfter(text: string, services: Services, isName: (word: string) => boolean): readonly Feature[] {
  const apart = unitSetApart(text);
  return [...following(text, services, isName), ...(apart === undefined ? [] : following(apart, services, isName))]
    .map(({ feature }) => plain(feature))
    .filter((feature) => feature !== undefined);
}

/** The last word is held back from the parser, which might settle for one of several things it can be. */
function following(text: string, { Grammar, parser }: Services, isName: (word: string) => boolean): NextFeature[] {
  const { tokens } = parser.Lexer.tokenize(text, { mode: 'partial' });
  const last = tokens.at(-1);
  const held = last !== undefined && /^\p{L}/u.test(last.image) ? last.startOffset : text.length;
  const { tokenIndex, elementStack } = parser.CompletionParser.parse(text.slice(0, held));
  const entry = GrammarUtils.getEntryRule(Grammar);
  const begun = tokenIndex > 0 || entry === undefined;
  const start = begun ? elementStack.map((feature) => ({ feature })) : [beforeRule(entry)];
  return findNextFeatures([start], asTyped(tokens, tokenIndex, isName));
}

/** A place in front of a rule, as the search for what follows wants to begin from: a group of nothing and a call of it. */
function beforeRule(rule: GrammarAST.ParserRule): NextFeature {
  const nothing: Loose = { $type: 'Group', elements: [] };
  const call: Loose = { $type: 'RuleCall', rule: { ref: rule, $refText: rule.name }, arguments: [] };
  const group: Loose = { $type: 'Group', elements: [nothing, call] };
  nothing.$container = group;
  call.$container = group;
  return { feature: nothing as unknown as GrammarAST.Group };
}

/** A piece of grammar while it is put together. */
interface Loose {
  readonly $type: string;
  $container?: Loose;
  readonly [property: string]: unknown;
}

function plain(feature: GrammarAST.AbstractElement): Feature | undefined {
  const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? '';
  if (GrammarAST.isKeyword(feature)) return { kind: 'word', word: feature.value, rule };
  if (GrammarAST.isCrossReference(feature)) return { kind: 'name', type: feature.type.$refText, rule };
  if (!GrammarAST.isRuleCall(feature)) return undefined;
  if (rule === 'CheckName') return { kind: 'check' };
  return feature.rule.$refText === 'STRING' ? { kind: 'text', rule } : undefined;
}
