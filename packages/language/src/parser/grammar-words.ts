import { type AstNode, AstUtils, GrammarAST } from 'langium';

/**
 * The words that may begin a statement in the braces of a rule, read off the grammar so that a message never lists
 * other words than the parser takes. In the order of the grammar; rules that begin with a name give none.
 */
export function wordsInside(grammar: GrammarAST.Grammar, ruleName: string): readonly string[] {
  const rule = grammar.rules.find((candidate) => candidate.name === ruleName);
  if (!rule || !GrammarAST.isParserRule(rule)) return [];
  const repeated = AstUtils.streamAllContents(rule).find(
    (node) => GrammarAST.isAbstractElement(node) && node.cardinality === '*' && !isList(node),
  );
  return repeated ? [...new Set(firstWords(repeated))] : [];
}

/** `(',' part)*` repeats, but begins no statement. */
const isList = (node: AstNode): boolean =>
  GrammarAST.isGroup(node) && GrammarAST.isKeyword(node.elements[0]) && node.elements[0].value === ',';

function firstWords(node: AstNode | undefined): string[] {
  if (node === undefined) return [];
  if (GrammarAST.isKeyword(node)) return [node.value];
  if (GrammarAST.isAlternatives(node)) return node.elements.flatMap(firstWords);
  if (GrammarAST.isGroup(node)) return firstWords(node.elements.find((element) => !GrammarAST.isAction(element)));
  if (GrammarAST.isAssignment(node)) return firstWords(node.terminal);
  if (GrammarAST.isRuleCall(node)) {
    const rule = node.rule.ref;
    return rule && GrammarAST.isParserRule(rule) ? firstWords(rule.definition) : [];
  }
  return [];
}
