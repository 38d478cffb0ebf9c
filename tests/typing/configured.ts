import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getWordAtText } from 'monaco-editor-core/esm/vs/editor/common/core/wordHelper.js';
import { IndentRulesSupport } from 'monaco-editor-core/esm/vs/editor/common/languages/supports/indentRules.js';
import { OnEnterSupport } from 'monaco-editor-core/esm/vs/editor/common/languages/supports/onEnter.js';
import { root } from '../house/sources.js';

interface EnterRule {
  readonly beforeText: string;
  readonly afterText?: string;
  readonly action: { readonly indent: string; readonly appendText?: string };
}

/** What is read of language-configuration.json. */
export interface Configuration {
  readonly comments: { readonly lineComment: string; readonly blockComment: readonly [string, string] };
  readonly brackets: readonly (readonly [string, string])[];
  readonly autoClosingPairs: readonly { readonly open: string; readonly close: string; readonly notIn: string[] }[];
  readonly surroundingPairs: readonly (readonly [string, string])[];
  readonly folding: { readonly markers: { readonly start: string; readonly end: string } };
  readonly indentationRules: { readonly increaseIndentPattern: string; readonly decreaseIndentPattern: string };
  readonly onEnterRules: readonly EnterRule[];
  readonly wordPattern: string;
}

export const configuration: Configuration = JSON.parse(
  readFileSync(join(root, 'packages/extension/language-configuration.json'), 'utf8'),
);

/** What Enter does with the next line's indentation, by the editor's own numbers. */
export const INDENTS = ['none', 'indent', 'indentOutdent', 'outdent'] as const;
/** The editor's usual strategy, by which it follows all the rules. */
const FULL = 4;

const enter = new OnEnterSupport({
  brackets: configuration.brackets,
  onEnterRules: configuration.onEnterRules.map(({ beforeText, afterText, action }) => ({
    beforeText: new RegExp(beforeText),
    ...(afterText !== undefined && { afterText: new RegExp(afterText) }),
    action: { indentAction: INDENTS.indexOf(action.indent as 'none'), appendText: action.appendText },
  })),
});

/** What Enter does at the mark `|` of a line: how the next one is indented, and what is put before its rest. */
export function atEnter(line: string): { indent: string | undefined; append: string } | undefined {
  const [before = '', after = ''] = line.split('|');
  const action = enter.onEnter(FULL, '', before, after);
  return action ? { indent: INDENTS[action.indentAction], append: action.appendText ?? '' } : undefined;
}

const { increaseIndentPattern, decreaseIndentPattern } = configuration.indentationRules;
export const indentRules = new IndentRulesSupport({
  increaseIndentPattern: new RegExp(increaseIndentPattern),
  decreaseIndentPattern: new RegExp(decreaseIndentPattern),
});

/** The word that a double click chooses at a place (from 0) of a line. */
export const wordAt = (line: string, at: number): string | undefined =>
  getWordAtText(at + 1, new RegExp(configuration.wordPattern, 'g'), line, 0)?.word;
