import { SymbolKind } from 'vscode-languageserver';
import type { OutlineKind } from '../outline/outline.js';

/** What the editor's protocol has for the things of the language. */
export const SYMBOL_KINDS: Readonly<Record<OutlineKind, SymbolKind>> = {
  Cabinet: SymbolKind.Class,
  Job: SymbolKind.Function,
  JobLine: SymbolKind.Field,
  LateLine: SymbolKind.Event,
  MillLine: SymbolKind.Event,
  Parameter: SymbolKind.Property,
  Part: SymbolKind.Variable,
  Joint: SymbolKind.Method,
  Notch: SymbolKind.Method,
  Cant: SymbolKind.Method,
  Material: SymbolKind.TypeParameter,
  Band: SymbolKind.TypeParameter,
  Machine: SymbolKind.Interface,
  Jig: SymbolKind.Interface,
  Connector: SymbolKind.Struct,
  Pattern: SymbolKind.Enum,
  Pose: SymbolKind.Constant,
  Limits: SymbolKind.Constant,
  Tolerances: SymbolKind.Constant,
  Changes: SymbolKind.Constant,
  Glue: SymbolKind.Constant,
};
