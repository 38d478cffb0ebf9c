import { readFileSync } from 'node:fs';
import { PassThrough } from 'node:stream';
import { startLanguageServer } from 'langium/lsp';
import { NodeFileSystem } from 'langium/node';
import { createConnection } from 'vscode-languageserver/node';
import {
  type CancellationToken,
  type ClientCapabilities,
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { FILE_READ, FIT_STATE, type FileRead, type FitState } from './protocol.js';
import { createJoineryServerServices } from './services.js';

const folder = new URL('../../../../examples/', import.meta.url);

export const example = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
export const exampleUri = (name: string): string => new URL(name, folder).href;

/** A client and a server that speak over a wire in memory; the server reads the examples. */
export async function connect(settings: Readonly<Record<string, unknown>> = {}, capabilities: ClientCapabilities = {}) {
  const [up, down] = [new PassThrough(), new PassThrough()];
  const connection = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  const { shared } = createJoineryServerServices({ connection, ...NodeFileSystem });
  startLanguageServer(shared);
  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const states: FitState[] = [];
  const reads: string[] = [];
  client.onNotification(FILE_READ, ({ uri }: FileRead) => {
    reads.push(uri);
  });
  const waiting: { fits: (state: FitState) => boolean; give: (state: FitState) => void }[] = [];
  client.onNotification(FIT_STATE, (state: FitState) => {
    states.push(state);
    for (const one of waiting.filter(({ fits }) => fits(state))) one.give(state);
  });
  client.listen();
  await client.sendRequest('initialize', {
    processId: null,
    rootUri: null,
    capabilities,
    initializationOptions: { dryfit: settings },
  });
  await client.sendNotification('initialized', {});
  const versions = new Map<string, number>();
  return {
    states,
    /** Files that are not open and were told to have been read anew. */
    reads,
    close: (name: string): Promise<void> =>
      client.sendNotification('textDocument/didClose', { textDocument: { uri: exampleUri(name) } }),
    ask: <T>(request: string, name: string, more: object = {}): Promise<T> =>
      client.sendRequest(request, { textDocument: { uri: exampleUri(name) }, ...more }),
    /** The same, until it is no longer wanted. */
    askUntil: <T>(request: string, name: string, token: CancellationToken): Promise<T> =>
      client.sendRequest(request, { textDocument: { uri: exampleUri(name) } }, token),
    tell: (notification: string, params: object) => client.sendNotification(notification, params),
    /** The files of the examples' folder that the server holds, by their names. */
    held: () =>
      shared.workspace.LangiumDocuments.all
        .map(({ uri }) => `${uri}`)
        .filter((uri) => uri.startsWith(folder.href))
        .map((uri) => uri.slice(folder.href.length))
        .toArray()
        .sort(),
    /** When the server has next taken in a change of any file. */
    takenIn: () =>
      new Promise<void>((give) => {
        const listening = shared.workspace.DocumentBuilder.onUpdate(() => {
          listening.dispose();
          void shared.workspace.WorkspaceLock.read(() => undefined).then(give);
        });
      }),
    /** Opens a text, or puts another in its place, and waits until the server has said how it stands. */
    async type(name: string, text: string): Promise<FitState> {
      const uri = exampleUri(name);
      const version = (versions.get(uri) ?? 0) + 1;
      versions.set(uri, version);
      const stands = new Promise<FitState>((give) =>
        waiting.push({ fits: (state) => state.uri === uri && state.version === version, give }),
      );
      if (version === 1) {
        const textDocument = { uri, languageId: 'joinery', version, text };
        await client.sendNotification('textDocument/didOpen', { textDocument });
      } else {
        const textDocument = { uri, version };
        await client.sendNotification('textDocument/didChange', { textDocument, contentChanges: [{ text }] });
      }
      return await stands;
    },
    /** The next word on how a file stands that fits. */
    next: (fits: (state: FitState) => boolean) => new Promise<FitState>((give) => waiting.push({ fits, give })),
    async end() {
      await client.sendRequest('shutdown');
      client.dispose();
      connection.dispose();
    },
  };
}
