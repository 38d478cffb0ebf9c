// The parts of the editor's own code that read a language configuration; the package has no types for them.
declare module 'monaco-editor-core/esm/vs/editor/common/languages/supports/onEnter.js' {
  export interface EnterAction {
    readonly indentAction: number;
    readonly appendText?: string;
  }
  export class OnEnterSupport {
    constructor(rules: { brackets: unknown; onEnterRules: unknown });
    onEnter(autoIndent: number, previousLine: string, before: string, after: string): EnterAction | null;
  }
}
declare module 'monaco-editor-core/esm/vs/editor/common/languages/supports/indentRules.js' {
  export class IndentRulesSupport {
    constructor(rules: { increaseIndentPattern: RegExp; decreaseIndentPattern: RegExp });
    shouldIncrease(line: string): boolean;
    shouldDecrease(line: string): boolean;
  }
}
declare module 'monaco-editor-core/esm/vs/editor/common/core/wordHelper.js' {
  /** Columns count from 1. */
  export function getWordAtText(
    column: number,
    word: RegExp,
    line: string,
    offset: number,
  ): { readonly word: string } | null;
}
