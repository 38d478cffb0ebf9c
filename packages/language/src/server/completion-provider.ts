import { checkCodes } from '@dryfit/engine';
import { AstUtils, GrammarAST, GrammarUtils, type MaybePromise } from 'langium';
import {
  type CompletionAcceptor,
  type CompletionContext,
  DefaultCompletionProvider,
  findNextFeatures,
  type NextFeature,
} from 'langium/lsp';
import { CompletionItemKind, type TextDocument } from 'vscode-languageserver';
import { ALLOWED_HERE } from '../checks/unknown-check.js';
import { openStatement, unitSetApart } from '../completion/context.js';
import { asTyped } from '../completion/tokens.js';
import { checkHover } from '../hover/check.js';
import { wordLine } from '../hover/words.js';

/** Langium's completion, told that words may be names; words and checks come with what they mean. */
export class JoineryCompletionProvider extends DefaultCompletionProvider {
  protected override findFeaturesAt(document: TextDocument, offset: number): NextFeature[] {
    const text = document.getText().slice(0, offset);
    const context = openStatement(text, this.lexer.tokenize(text, { mode: 'partial' }).tokens);
    const apart = unitSetApart(context);
    return [...this.featuresAfter(context), ...(apart === undefined ? [] : this.featuresAfter(apart))];
  }

  /** The last word is held back from the parser, which might settle for one of several things it can be. */
  private featuresAfter(text: string): NextFeature[] {
    const { tokens } = this.lexer.tokenize(text, { mode: 'partial' });
    const last = tokens.at(-1);
    const held = last !== undefined && /^\p{L}/u.test(last.image) ? last.startOffset : text.length;
    const { tokenIndex, elementStack } = this.completionParser.parse(text.slice(0, held));
    const entry = GrammarUtils.getEntryRule(this.grammar);
    const begun = tokenIndex > 0 || entry === undefined;
    const start = begun ? elementStack.map((feature) => ({ feature })) : [this.buildSyntheticEntryRuleCall(entry)];
    return findNextFeatures([start], asTyped(tokens, tokenIndex));
  }

  protected override completionFor(
    context: CompletionContext,
    next: NextFeature,
    acceptor: CompletionAcceptor,
  ): MaybePromise<void> {
    if (GrammarAST.isRuleCall(next.feature) && ruleOf(next.feature) === 'CheckName') {
      for (const label of [...checkCodes, ...ALLOWED_HERE]) {
        acceptor(context, {
          label,
          kind: CompletionItemKind.Value,
          documentation: markdown(checkHover(label)),
          sortText: '0',
        });
      }
      return undefined;
    }
    return super.completionFor(context, next, acceptor);
  }

  protected override completionForKeyword(
    context: CompletionContext,
    keyword: GrammarAST.Keyword,
    acceptor: CompletionAcceptor,
  ): void {
    if (!this.filterKeyword(context, keyword)) return;
    acceptor(context, {
      label: keyword.value,
      kind: this.getKeywordCompletionItemKind(keyword),
      documentation: markdown(wordLine(keyword.value, ruleOf(keyword))),
      sortText: '1',
    });
  }
}

const ruleOf = (element: GrammarAST.AbstractElement): string =>
  AstUtils.getContainerOfType(element, GrammarAST.isParserRule)?.name ?? '';

const markdown = (value: string | undefined) =>
  value === undefined ? undefined : { kind: 'markdown' as const, value };
