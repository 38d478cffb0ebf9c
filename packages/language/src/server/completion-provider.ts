import { type LangiumDocument, UriUtils } from 'langium';
import type { CompletionProvider } from 'langium/lsp';
import type { CompletionItem, CompletionList, CompletionParams } from 'vscode-languageserver-protocol';
import { factsAround } from '../completion/around-cursor.js';
import { complete } from '../completion/complete.js';
import { anew, type Opened, openedIn } from '../completion/context.js';
import { importBegun, importOffers, pathBetween } from '../completion/imports.js';
import { type Around, situationOf } from '../completion/situation.js';
import { type File, isCabinet } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { fileOf } from '../scope/imports.js';
import { namesOfCabinet } from '../scope/names.js';
import { featuresAfter } from './completion-features.js';
import { itemOf, resolved } from './completion-items.js';
import { knowledgeOf } from './knowledge.js';
import type { JoineryServerServices } from './services.js';

/** Finds out what the grammar takes at the cursor, has it sifted by what fits there, and hands that to the editor. */
export class JoineryCompletionProvider implements CompletionProvider {
  readonly completionOptions = { triggerCharacters: ['.', '"'] };
  private snippets = false;

  constructor(private readonly services: JoineryServerServices) {
    services.shared.lsp.LanguageServer.onInitialize(({ capabilities }) => {
      this.snippets = capabilities.textDocument?.completion?.completionItem?.snippetSupport === true;
    });
  }

  getCompletion(document: LangiumDocument, { position, context }: CompletionParams): CompletionList | undefined {
    const file = fileOf(document);
    if (file === undefined) return undefined;
    const text = document.textDocument.getText();
    const offset = document.textDocument.offsetAt(position);
    const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
    const quote = importBegun(line);
    // Any other quote begins or ends a text of the writer's own, or is an inch.
    if (context?.triggerCharacter === '"' && quote === undefined) return undefined;
    const start = quote === undefined ? offset - wordBefore(line).length : offset - line.length + quote;
    // No more is read than the entry around, so that a long file costs no more than a short one.
    const from =
      file.entries.findLast(({ $cstNode: cst }) => cst !== undefined && cst.offset < start)?.$cstNode?.offset ?? 0;
    const part = text.slice(from, start);
    const { tokens } = this.services.parser.Lexer.tokenize(part, { mode: 'partial' });
    const begun = openedIn(part, tokens, from);
    const { opened, features } =
      quote === undefined ? this.follow(file, begun, line, start) : { opened: begun, features: [] };
    const under = /^[\p{L}\p{N}_]*/u.exec(text.slice(start))?.[0] ?? '';
    const situation = situationOf(file, opened, start, under, this.around(file, text));
    const offers = quote === undefined ? complete(features, situation) : importOffers(situation, true);
    const made = {
      range: { start: document.textDocument.positionAt(start), end: position },
      snippets: this.snippets,
      uri: document.uri.toString(),
      cabinet: situation.cabinet?.name,
    };
    return { isIncomplete: false, items: offers.map((offer, index) => itemOf(offer, index, made)) };
  }

  /** What may follow; on a line of its own behind a statement that could be whole, only what begins a new one. */
  private follow(file: File, begun: Opened, line: string, start: number) {
    const isName = (word: string) => this.isName(word, file, begun);
    const features = featuresAfter(begun.text, this.services, isName);
    if (begun.begun.length === 0 || !/^\s*[\p{L}\p{N}_-]*$/u.test(line)) return { opened: begun, features };
    const opened = anew(begun, start);
    const first = featuresAfter(opened.text, this.services, isName);
    const all = new Set(features.map((feature) => JSON.stringify(feature)));
    return first.every((feature) => all.has(JSON.stringify(feature)))
      ? { opened, features: first }
      : { opened: begun, features };
  }

  /** True for a word that a part, a parameter or something of the shop is called. */
  private isName(word: string, file: File, { blocks }: Opened): boolean {
    const entry = file.entries.find(({ $cstNode: cst }) => cst?.offset === blocks[0]?.start);
    const names = isCabinet(entry) ? namesOfCabinet(entry) : undefined;
    if (names?.parts.has(word) || names?.parameters.has(word)) return true;
    return NAMED.some((type) => this.services.joinery.Files.find(file, type, word) !== undefined);
  }

  /** What a reader is shown of an item once it is looked at. */
  resolve(item: CompletionItem, document: LangiumDocument): CompletionItem {
    return resolved(item, document, this.services.joinery.Files, knowledgeOf(this.services));
  }

  private around(file: File, text: string): Around {
    const { joinery, editor, parser, shared } = this.services;
    const here = file.$document?.uri;
    return {
      names: (of, type) => joinery.Files.all(of, type),
      shop: (of) => joinery.Shops.of(of),
      found: (cabinet) => editor.LastGood.known(cabinet),
      facts: (joint, cursor) => factsAround(text, joint, cursor, parser.LangiumParser),
      imports: () =>
        shared.workspace.LangiumDocuments.all
          .map(({ uri }) => uri)
          .filter((uri) => here !== undefined && !isLibrary(uri) && !UriUtils.equals(uri, here))
          .map((uri) => pathBetween(here?.path ?? '', uri.path))
          .filter((path) => path !== undefined)
          .toArray(),
    };
  }
}

const NAMED = ['Cabinet', 'Material', 'Band', 'Machine', 'Connector', 'Pattern'];

/** The part of a word that stands at the end of a line; the name of a check has hyphens. */
const wordBefore = (line: string): string =>
  /\ballow\s+([\p{L}\p{N}_-]*)$/u.exec(line)?.[1] ?? /[\p{L}_][\p{L}\p{N}_]*$/u.exec(line)?.[0] ?? '';
