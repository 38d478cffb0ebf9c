import { type AstNode, AstUtils, GrammarAST } from 'langium';
import {
  type CompletionAcceptor,
  type CompletionContext,
  DefaultCompletionProvider,
  findNextFeatures,
  type NextFeature,
} from 'langium/lsp';
import { asTyped } from '../completion/tokens.js';
