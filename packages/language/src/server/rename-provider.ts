import {
  Cancellation,
  CstUtils,
  GrammarUtils,
  interruptAndCheck,
  type LangiumDocument,
  type LeafCstNode,
  type ReferenceDescription,
  URI,
} from 'langium';
import type { RenameProvider } from 'langium/lsp';
import {
  LSPErrorCodes,
  type Position,
  type Range,
  type RenameParams,
  ResponseError,
  type TextDocumentPositionParams,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { type Reader, readerOf } from '../format/pieces.js';
import { isPartRef } from '../generated/ast.js';
import { remember } from '../remember.js';
import { clashesOf, type NamedIn, type Refusal, whyFixed, whyMisread } from '../rename/rename.js';
import type { Named } from '../scope/names.js';
import { toTextEdits } from './convert.js';
import type { JoineryServerServices } from './services.js';

/** Gives things other names in all files, or says why that cannot be. */
export class JoineryRenameProvider implements RenameProvider {
  private readonly reader: Reader;

  constructor(private readonly services: JoineryServerServices) {
    this.reader = readerOf(services);
  }

  prepareRename(document: LangiumDocument, { position }: TextDocumentPositionParams): Range | undefined {
    const { leaf, target } = this.namedAt(document, position);
    if (!leaf || !target) return undefined;
    refuse(whyFixed(target));
    return leaf.range;
  }

  async rename(
    document: LangiumDocument,
    { position, newName }: RenameParams,
    token = Cancellation.CancellationToken.None,
  ): Promise<WorkspaceEdit | undefined> {
    const { target } = this.namedAt(document, position);
    refuse(whyFixed(target));
    if (!target || newName === target.name) return target && { changes: {} };
    refuse(whyMisread(newName, [], this.reader));
    const { LangiumDocuments } = this.services.shared.workspace;
    const around = {
      files: this.services.joinery.Files,
      documents: LangiumDocuments.all,
      isUsed: (node: object) => this.placesOf(node as Named, false).length > 0,
    };
    for (const clash of clashesOf(target, newName, around)) {
      await interruptAndCheck(token);
      refuse(clash);
    }
    const texts = this.textsWith(target, newName);
    for (const text of texts) {
      await interruptAndCheck(token);
      refuse(whyMisread(newName, [text], this.reader));
    }
    const changes = texts.flatMap(({ uri, edits, document: changed }) =>
      changed ? [[uri, toTextEdits(changed, edits)] as const] : [],
    );
    return { changes: Object.fromEntries(changes) };
  }

  /**
   * The thing that a name at a place stands for, and the name; for the number of `shelf 2` that of the part before it.
   * None where the place is another number or a word of the language.
   */
  private namedAt({ parseResult, textDocument }: LangiumDocument, position: Position) {
    const root = parseResult.value.$cstNode;
    const { nameRegexp } = this.services.parser.GrammarConfig;
    const at: LeafCstNode | undefined =
      root && CstUtils.findDeclarationNodeAtOffset(root, textDocument.offsetAt(position), nameRegexp);
    const target = at && (this.services.references.References.findDeclarations(at)[0] as Named | undefined);
    const leaf = at && isPartRef(at.astNode) ? GrammarUtils.findNodeForProperty(at.astNode.$cstNode, 'part') : at;
    // An editor puts its box where the name is, which has to be in the line of the cursor.
    const isHere = leaf?.text === target?.name && leaf?.range.start.line === position.line;
    return target && leaf && isHere ? { leaf, target } : {};
  }

  private placesOf(target: Named, includeDeclaration: boolean): ReferenceDescription[] {
    return this.services.references.References.findReferences(target, { includeDeclaration }).toArray();
  }

  /** The texts in which a name stands, with the new one in each of its places. */
  private textsWith(target: Named, name: string): (NamedIn & { readonly document?: LangiumDocument | undefined })[] {
    const byFile = new Map<string, ReferenceDescription[]>();
    for (const place of this.placesOf(target, true)) remember(byFile, `${place.sourceUri}`, () => []).push(place);
    return [...byFile].map(([uri, places]) => {
      const document = this.services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri));
      const edits = places.map(({ segment: { offset: start, end } }) => ({ start, end, text: name }));
      return { uri, document, text: document?.textDocument.getText() ?? '', edits };
    });
  }
}

function refuse(refusal: Refusal | undefined): void {
  if (refusal) throw new ResponseError(LSPErrorCodes.RequestFailed, refusal.refused);
}
