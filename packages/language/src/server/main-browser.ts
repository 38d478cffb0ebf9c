import { startLanguageServer } from 'langium/lsp';
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { ClientFileSystem } from './file-system.js';
import { takeRefusals } from './registrations.js';
import { createJoineryServerServices } from './services.js';
import { browserThread } from './thread-browser.js';

const worker = self as DedicatedWorkerGlobalScope;
const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));
takeRefusals(connection);
const fileSystemProvider = () => new ClientFileSystem(connection);
const { shared } = createJoineryServerServices({ connection, fileSystemProvider }, ({ later }) => {
  if (later === undefined) throw new Error('the client has not said where what is loaded late lies');
  return browserThread(`${later}sequence.mjs`);
});
startLanguageServer(shared);
