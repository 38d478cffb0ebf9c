import {
  AstUtils,
  type CompositeCstNode,
  type CstNode,
  GrammarAST,
  isCompositeCstNode,
  isLeafCstNode,
  type LeafCstNode,
} from 'langium';

/** What the grammar says about a token's place. */
export interface Mark {
  /** It begins a statement, a fact, a setting or a job's line. */
  readonly opens: boolean;
  /** How many braces it stands in. */
  readonly depth: number;
  /** The grammar rule whose word or reference it is. */
  readonly rule: string;
  /** The innermost tree node it belongs to. */
  readonly node: CompositeCstNode | undefined;
  /** For `{` and `}`: its partner, when it has one. */
  readonly partner?: LeafCstNode | undefined;
}

/** Reads the marks of all leaves off the tree. */
export function marksOf(root: CompositeCstNode): ReadonlyMap<LeafCstNode, Mark> {
  const marks = new Map<LeafCstNode, Mark>();
  walk(root, 0, false, marks);
  return marks;
}

function walk(node: CompositeCstNode, depth: number, opening: boolean, marks: Map<LeafCstNode, Mark>): void {
  const content = node.content.filter((child) => !isLeafCstNode(child) || !child.hidden);
  const brace = (text: string) =>
    content.find((child) => isLeafCstNode(child) && child.text === text) as LeafCstNode | undefined;
  const [open, close] = [brace('{'), brace('}')];
  content.forEach((child, index) => {
    const iteration = opensIteration(child);
    const inside = depth + (iteration && node.container !== undefined ? 1 : 0);
    const within = iteration || !betweenBraces(child, open, close) ? inside : depth + 1;
    const opens = iteration || (opening && index === 0) || continuesPattern(child);
    if (isLeafCstNode(child)) {
      const partner = child === open ? close : child === close ? open : undefined;
      marks.set(child, { opens, depth: within, rule: ruleOf(child), node, partner });
    } else if (isCompositeCstNode(child)) walk(child, within, opens, marks);
  });
}

/** The second and third word of a pattern's layout stand like settings of their own. */
function continuesPattern(child: CstNode): boolean {
  if (!isLeafCstNode(child) || !['last', 'skip', 'pitch'].includes(child.text) || ruleOf(child) !== 'Layout')
    return false;
  return child.container?.container?.astNode.$type === 'Pattern' && GrammarAST.isKeyword(child.grammarSource);
}

function betweenBraces(child: CstNode, open: LeafCstNode | undefined, close: LeafCstNode | undefined): boolean {
  return open !== undefined && child.offset > open.offset && (close === undefined || child.offset < close.offset);
}

const ruleOf = (node: CstNode): string =>
  node.grammarSource === undefined
    ? ''
    : (AstUtils.getContainerOfType(node.grammarSource, GrammarAST.isParserRule)?.name ?? '');

/** True for the first token or node of what a block's braces hold any number of. */
function opensIteration({ grammarSource }: CstNode): boolean {
  if (grammarSource === undefined) return false;
  let known = iterations.get(grammarSource);
  if (known === undefined) {
    known = beginsBlockItem(grammarSource);
    iterations.set(grammarSource, known);
  }
  return known;
}

const iterations = new WeakMap<GrammarAST.AbstractElement, boolean>();

function beginsBlockItem(element: GrammarAST.AbstractElement): boolean {
  const { $container: container } = element;
  if (element.cardinality === '*') {
    if (GrammarAST.isParserRule(container)) return container.entry;
    const before = GrammarAST.isGroup(container)
      ? container.elements[container.elements.indexOf(element) - 1]
      : undefined;
    return before !== undefined && GrammarAST.isKeyword(before) && before.value === '{';
  }
  if (GrammarAST.isParserRule(container)) {
    if (!container.fragment) return false;
    const grammar = AstUtils.getContainerOfType(container, GrammarAST.isGrammar);
    const calls =
      grammar === undefined ? [] : AstUtils.streamAllContents(grammar).filter(GrammarAST.isRuleCall).toArray();
    return calls.some((call) => call.rule.ref === container && beginsBlockItem(call));
  }
  if (GrammarAST.isGroup(container) && container.elements.find((one) => !GrammarAST.isAction(one)) !== element)
    return false;
  return GrammarAST.isAbstractElement(container) && beginsBlockItem(container);
}
