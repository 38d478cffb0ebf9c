import { type LangiumDocument, TextDocument, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import type { CompletionItem } from 'vscode-languageserver-protocol';
import { createJoineryServerServices } from './services.js';

export const examples = new URL('../../../../examples/', import.meta.url);
export const uri = URI.parse(new URL('completed.joinery', examples).href);

/** A server with one open file beside the examples, and what it offers there. */
export async function completing() {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  const { DocumentBuilder, LangiumDocuments, TextDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.initializeWorkspace([]);
  DocumentBuilder.updateBuildOptions = { validation: true };
  let version = 0;
  const type = async (content: string): Promise<LangiumDocument> => {
    TextDocuments.set(TextDocument.create(uri.toString(), 'joinery', ++version, content));
    await DocumentBuilder.update([uri], []);
    return LangiumDocuments.getOrCreateDocument(uri);
  };
  const offered = async (document: LangiumDocument, offset: number): Promise<readonly CompletionItem[]> => {
    const position = document.textDocument.positionAt(offset);
    const asked = { textDocument: { uri: uri.toString() }, position };
    return (await joinery.lsp.CompletionProvider?.getCompletion(document, asked))?.items ?? [];
  };
  /** What is offered at `|` in a text, the text without it having been whole before if `whole` gives it. */
  const at = async (text: string, whole?: string): Promise<readonly CompletionItem[]> => {
    if (whole !== undefined) await type(whole);
    return offered(await type(text.replace('|', '')), text.indexOf('|'));
  };
  return { shared, joinery, type, offered, at };
}

export const labels = (items: readonly CompletionItem[]): readonly string[] => items.map(({ label }) => label);

/** The words, names and numbers without the statements that are offered whole. */
export const words = (items: readonly CompletionItem[]): readonly string[] =>
  labels(items.filter(({ insertTextFormat, label }) => insertTextFormat !== 2 && !label.includes('…')));
