import { type ExtensionContext, Uri } from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { clientId, clientOptions } from './client-options.js';
import { start } from './start.js';

let client: LanguageClient | undefined;

/** Starts the language server as a web worker (an editor that runs in the browser alone). */
export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, 'dist/server-worker.js').toString(true);
  let worker: Worker | undefined;
  // Each start has a worker of its own: one that has shut down answers no more.
  const serve = async () => {
    worker?.terminate();
    worker = new Worker(script);
    // An editor's `Worker` may be one of its own that the client does not know for one.
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  };
  context.subscriptions.push({ dispose: () => worker?.terminate() });
  const later = `${Uri.joinPath(context.extensionUri, 'dist/later').toString(true)}/`;
  client = new LanguageClient(clientId, 'Dryfit', serve, clientOptions(later));
  await start(context, client);
}

/** Stops the server; the extension host waits for it. */
export async function deactivate(): Promise<void> {
  await client?.stop();
}
