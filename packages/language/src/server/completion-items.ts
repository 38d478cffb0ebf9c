import { AstUtils, type LangiumDocument } from 'langium';
import { type CompletionItem, CompletionItemKind, InsertTextFormat, type Range } from 'vscode-languageserver-protocol';
import type { Offer, OfferKind } from '../completion/offer.js';
import { asPlain, asSnippet } from '../completion/snippet.js';
import { type File, isFile } from '../generated/ast.js';
import { declarationHover } from '../hover/declaration.js';
import type { Knowledge } from '../hover/knowledge.js';
import { Lengths } from '../hover/lengths.js';
import { unitOf } from '../interpret/units.js';
import type { Files } from '../scope/files.js';
import { fileOf } from '../scope/imports.js';
import { namesOfCabinet } from '../scope/names.js';

const KINDS: Readonly<Record<OfferKind, CompletionItemKind>> = {
  word: CompletionItemKind.Keyword,
  side: CompletionItemKind.EnumMember,
  part: CompletionItemKind.Field,
  parameter: CompletionItemKind.Variable,
  cabinet: CompletionItemKind.Class,
  stock: CompletionItemKind.Constant,
  check: CompletionItemKind.Value,
  file: CompletionItemKind.File,
  // Not a snippet's: an editor may be told to leave out snippets, which know nothing of the place they are offered at.
  statement: CompletionItemKind.Struct,
};

/** Where and for whom items are made. */
interface Made {
  readonly range: Range;
  /** The client can take stops for its tabulator. */
  readonly snippets: boolean;
  readonly uri: string;
  /** Name of the cabinet around. */
  readonly cabinet: string | undefined;
}

/** What an item keeps, to be told more of when a reader looks at it. */
interface Kept {
  readonly uri: string;
  readonly cabinet?: string | undefined;
  readonly type: string;
  readonly name: string;
}

/** An offer as an item of the editor's list; `index` keeps the order. */
export function itemOf(offer: Offer, index: number, { range, snippets, uri, cabinet }: Made): CompletionItem {
  const { label, kind, detail, documentation, insert, names } = offer;
  const newText = insert ? (snippets ? asSnippet(insert) : asPlain(insert)) : label;
  const data: Kept | undefined = names && { uri, cabinet, ...names };
  return {
    label,
    kind: KINDS[kind],
    sortText: String(index).padStart(4, '0'),
    // Beside the label for clients that have room there: why a thing stands further down is read without choosing it.
    ...(detail === undefined ? {} : { detail, labelDetails: { description: detail } }),
    ...(documentation === undefined ? {} : { documentation: { kind: 'markdown', value: documentation } }),
    // The label of a statement has dots for what is to be written: its first word is what is typed.
    ...(kind === 'statement' ? { filterText: /^\S+/.exec(label)?.[0] ?? label } : {}),
    ...(insert && snippets ? { insertTextFormat: InsertTextFormat.Snippet } : {}),
    ...(data ? { data } : {}),
    textEdit: { range, newText },
  };
}

/** The item with what a hover says of the thing it names. */
export function resolved(
  item: CompletionItem,
  document: LangiumDocument,
  files: Files,
  knowledge: Knowledge,
): CompletionItem {
  const file = fileOf(document);
  const { cabinet, type, name } = item.data as Kept;
  const node = file && declared(file, files, type, name, cabinet);
  const root = node && AstUtils.findRootNode(node);
  const value = node && declarationHover(node, knowledge, new Lengths(unitOf(isFile(root) ? root : file)));
  return value === undefined ? item : { ...item, documentation: { kind: 'markdown', value } };
}

function declared(file: File, files: Files, type: string, name: string, cabinet: string | undefined) {
  if (type !== 'Part' && type !== 'Parameter') return files.find(file, type, name);
  const around = file.entries.find((entry) => entry.$type === 'Cabinet' && entry.name === cabinet);
  if (around?.$type !== 'Cabinet') return undefined;
  const { parts, parameters } = namesOfCabinet(around);
  return (type === 'Part' ? parts : parameters).get(name);
}
