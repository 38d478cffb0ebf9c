import { DocumentState, interruptAndCheck, isOperationCancelled, type LangiumDocument, URI } from 'langium';
import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver-protocol';
import { drawnFile } from './drawings.js';
import { fitStateOf } from './fit-state.js';
import {
  DRAWINGS,
  FILE_READ,
  FIT_STATE,
  type FileRead,
  type OfDocument,
  PLAN,
  type PlanAsked,
  SLOT_TABLE,
  SLOTS,
  type SlotTableAsked,
} from './protocol.js';
import type { JoineryServerServices } from './services.js';
import { slotRowsOf, slotTableOf } from './slots.js';

/** Answers what a client asks beyond the editor protocol, and tells it how each open file stands. */
export function answerRequests(services: JoineryServerServices): void {
  const { shared } = services;
  const connection = shared.lsp.Connection;
  if (!connection) return;
  const { DocumentBuilder, TextDocuments } = shared.workspace;
  // Files that somebody may be looking at without having them open.
  const shown = new Set<string>();
  connection.onRequest(DRAWINGS, (asked: OfDocument, token: CancellationToken) =>
    whenLinked(asked, services, token, (document) => {
      shown.add(`${document.uri}`);
      return drawnFile(document, services, token);
    }),
  );
  connection.onRequest(SLOTS, (asked: OfDocument, token: CancellationToken) =>
    whenLinked(asked, services, token, (document) => {
      shown.add(`${document.uri}`);
      return slotRowsOf(document, services, token);
    }),
  );
  connection.onRequest(PLAN, (asked: PlanAsked, token: CancellationToken) =>
    whenLinked(asked, services, token, (document) => {
      shown.add(`${document.uri}`);
      return services.editor.Plans.of(document, asked.job, token);
    }),
  );
  connection.onRequest(SLOT_TABLE, (asked: SlotTableAsked, token: CancellationToken) =>
    whenLinked(asked, services, token, (document) => slotTableOf(document, asked, services)),
  );
  DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
    const open = TextDocuments.get(document.uri);
    if (open) void connection.sendNotification(FIT_STATE, fitStateOf(document, open.version));
  });
  const read = (uri: URI) => {
    const told: FileRead = { uri: uri.toString() };
    if (shown.has(told.uri) && !TextDocuments.get(uri)) void connection.sendNotification(FILE_READ, told);
  };
  DocumentBuilder.onDocumentPhase(DocumentState.Linked, ({ uri }) => read(uri));
  DocumentBuilder.onUpdate((_, deleted) => deleted.forEach(read));
}

/** Answers for a document once its names are resolved; null if there is no such file. Stops when it is cancelled. */
async function whenLinked<T>(
  { textDocument }: OfDocument,
  services: JoineryServerServices,
  token: CancellationToken,
  answer: (document: LangiumDocument) => T | Promise<T>,
): Promise<T | null> {
  try {
    const document = await linked(URI.parse(textDocument.uri), services, token);
    await interruptAndCheck(token);
    return document ? await answer(document) : null;
  } catch (error) {
    if (!isOperationCancelled(error)) throw error;
    throw new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled: something newer is asked for');
  }
}

async function linked(
  uri: URI,
  { shared }: JoineryServerServices,
  token: CancellationToken,
): Promise<LangiumDocument | undefined> {
  const { DocumentBuilder, LangiumDocuments, WorkspaceManager } = shared.workspace;
  await WorkspaceManager.ready;
  try {
    if (!LangiumDocuments.hasDocument(uri))
      await DocumentBuilder.build([await LangiumDocuments.getOrCreateDocument(uri)]);
  } catch {
    return undefined;
  }
  await DocumentBuilder.waitUntil(DocumentState.Linked, uri, token);
  return LangiumDocuments.getDocument(uri);
}
