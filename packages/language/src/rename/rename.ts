import { type AstNode, AstUtils, type LangiumDocument } from 'langium';
import type { Edit } from '../format/edits.js';
import type { Reader } from '../format/pieces.js';
import { isCabinet, isFile } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import type { Files } from '../scope/files.js';
import { fileOf } from '../scope/imports.js';
import { type Named, namesOfCabinet } from '../scope/names.js';
import { readsBack } from './reads-back.js';

/** Why something cannot have another name, as a sentence or two for whoever asked. */
export interface Refusal {
  readonly refused: string;
}

/** A text with the places where a name stands in it. */
export interface NamedIn {
  readonly uri: string;
  readonly text: string;
  readonly edits: readonly Edit[];
}

/** What a new name has to get along with. */
export interface Neighbours {
  readonly files: Files;
  /** All files that are known. */
  readonly documents: Iterable<LangiumDocument>;
  /** True if anything is written that means this. */
  readonly isUsed: (node: AstNode) => boolean;
}

/** Why a thing cannot be renamed whatever the name is; undefined if it can. */
export function whyFixed(target: AstNode | undefined): Refusal | undefined {
  if (!isNamed(target)) return { refused: 'There is no name here that could be changed.' };
  const root = AstUtils.findRootNode(target);
  if (!isFile(root) || !root.$document || !isLibrary(root.$document.uri)) return undefined;
  return {
    refused: `${target.name} belongs to the built-in library, which cannot be changed. Define a ${nounOf(target)} of your own and name that.`,
  };
}

/** Why a thing cannot have a certain name, from what is visible where it is used; undefined if it can. */
export function* clashesOf(target: Named, name: string, around: Neighbours): Generator<Refusal | undefined> {
  const noun = nounOf(target);
  const cabinet = AstUtils.getContainerOfType(target.$container, isCabinet);
  if (cabinet) {
    const { parts, parameters } = namesOfCabinet(cabinet);
    const names: ReadonlyMap<string, Named> = target.$type === 'Part' ? parts : parameters;
    if (names.has(name)) yield { refused: `${cabinet.name} has a ${noun} called ${name} already.` };
    return;
  }
  const own = AstUtils.findRootNode(target);
  for (const document of around.documents) {
    const file = fileOf(document);
    if (!file || !isFile(own) || !around.files.layers(file).includes(own)) {
      yield undefined;
      continue;
    }
    const other = around.files.find(file, target.$type, name);
    const library = other?.$container?.$document;
    // A name of the library gives way, unless somebody means it.
    if (other === undefined || (library && isLibrary(library.uri) && !around.isUsed(other))) yield undefined;
    else
      yield { refused: `A ${noun} called ${name} is visible already where ${target.name} is (in ${fileName(other)}).` };
  }
}

/** Why texts would not mean the same with the name put in its places; undefined if they would. */
export function whyMisread(name: string, texts: readonly NamedIn[], reader: Reader): Refusal | undefined {
  if (!NAME.test(name)) {
    return {
      refused: `${name.trim() === '' ? 'Nothing' : `“${name}”`} is not a name: a name is one word of letters, digits and _, and begins with a letter.`,
    };
  }
  const misread = texts.find(({ text, edits }) => !readsBack(text, edits, reader));
  return (
    misread && {
      refused: `${name} would be read as a word of the language in ${lastOf(misread.uri)}. Take another name.`,
    }
  );
}

const NAME = /^[\p{L}_][\p{L}\p{N}_]*$/u;

const isNamed = (node: AstNode | undefined): node is Named =>
  node !== undefined && 'name' in node && typeof node.name === 'string';

const nounOf = ({ $type }: AstNode): string => $type.toLowerCase();

const fileName = (node: Named): string => lastOf(AstUtils.findRootNode(node).$document?.uri.toString() ?? '');
const lastOf = (uri: string): string => decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
