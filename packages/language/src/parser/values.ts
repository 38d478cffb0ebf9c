import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from 'langium';

/** Texts are taken as they stand between their quotes: the language has no escapes. */
export class JoineryValueConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cstNode: CstNode): ValueType {
    return rule.name === 'STRING' ? input.slice(1, -1) : super.runConverter(rule, input, cstNode);
  }
}
