import { GrammarAST, type LeafCstNode, type Reference } from 'langium';
import { type File, isImport } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { isWord, leavesOf, ruleOf, type Stretch } from '../tree/leaves.js';

/** What a word of a text is, in the editor protocol's own terms. */
export type TokenType = (typeof TOKEN_TYPES)[number];
export const TOKEN_TYPES = [
  'variable',
  'parameter',
  'class',
  'function',
  'type',
  'interface',
  'struct',
  'enum',
  'decorator',
  'keyword',
  'number',
  'string',
  'operator',
  'comment',
] as const;

export type TokenModifier = (typeof TOKEN_MODIFIERS)[number];
export const TOKEN_MODIFIERS = ['declaration', 'defaultLibrary'] as const;

/** A word on one line. */
export interface Token extends Stretch {
  readonly type: TokenType;
  readonly modifiers: readonly TokenModifier[];
}

/** What the named things of the language are. */
const OF_NAMED: Readonly<Record<string, TokenType>> = {
  Part: 'variable',
  Parameter: 'parameter',
  Cabinet: 'class',
  Job: 'function',
  Material: 'type',
  Band: 'type',
  Machine: 'interface',
  Jig: 'interface',
  Connector: 'struct',
  Pattern: 'enum',
};

/**
 * What each word of a text is, in the order they stand: by its place in the grammar, so that a part called `top` is a
 * part and the side `top` is a word. Commas, braces and the like are left out.
 */
export function* tokensOf(file: File, within?: Stretch): Generator<Token> {
  const library = file.$document !== undefined && isLibrary(file.$document.uri);
  for (const leaf of leavesOf(file.$cstNode, within)) {
    const kind = kindOf(leaf, library);
    if (kind) yield* onLines(leaf, kind);
  }
}

type Kind = Pick<Token, 'type' | 'modifiers'>;

function kindOf(leaf: LeafCstNode, library: boolean): Kind | undefined {
  if (leaf.hidden) return leaf.tokenType.name.endsWith('COMMENT') ? plain('comment') : undefined;
  if (ruleOf(leaf) === 'CheckName') return plain('decorator');
  if (isWord(leaf)) return plain('keyword');
  switch (leaf.tokenType.name) {
    case 'NUMBER':
      return plain('number');
    case 'STRING':
      return plain('string');
  }
  if (GrammarAST.isKeyword(leaf.grammarSource)) return /^[-+*/=±x]/.test(leaf.text) ? plain('operator') : undefined;
  return named(leaf, library);
}

function named(leaf: LeafCstNode, library: boolean): Kind | undefined {
  const node = leaf.astNode;
  const reference = referenceAt(leaf);
  if (reference) {
    const target = reference.ref;
    const type = OF_NAMED[target?.$type ?? ''];
    const at = target && fileUri(target);
    return type && { type, modifiers: at && isLibrary(at) ? ['defaultLibrary'] : [] };
  }
  const type = isImport(node) ? undefined : OF_NAMED[node.$type];
  return type && { type, modifiers: library ? ['declaration', 'defaultLibrary'] : ['declaration'] };
}

/** The reference whose word a leaf is. */
function referenceAt(leaf: LeafCstNode): Reference | undefined {
  for (const value of Object.values(leaf.astNode)) {
    for (const one of Array.isArray(value) ? value : [value]) {
      if (isReferenceAt(one, leaf)) return one;
    }
  }
  return undefined;
}

const isReferenceAt = (value: unknown, leaf: LeafCstNode): value is Reference =>
  typeof value === 'object' && value !== null && '$refNode' in value && sameStretch(value.$refNode, leaf);

const sameStretch = (node: unknown, leaf: LeafCstNode): boolean =>
  typeof node === 'object' && node !== null && 'offset' in node && node.offset === leaf.offset;

function fileUri(node: NonNullable<Reference['ref']>) {
  let root = node;
  while (root.$container) root = root.$container;
  return root.$document?.uri;
}

const plain = (type: TokenType): Kind => ({ type, modifiers: [] });

/** A comment that spans lines is one token a line. */
function* onLines(leaf: LeafCstNode, kind: Kind): Generator<Token> {
  for (const { 0: line, index } of leaf.text.matchAll(/[^\r\n]+/g)) {
    yield { start: leaf.offset + index, end: leaf.offset + index + line.length, ...kind };
  }
}
