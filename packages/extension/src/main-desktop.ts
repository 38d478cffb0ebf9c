import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientId, clientOptions } from './client-options.js';
import { start } from './start.js';
import { ownCommandLine } from './tasks/own-command-line.js';

let client: LanguageClient | undefined;

/** Starts the language server as a child process of the extension host (desktop and remote). */
export async function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.cjs');
  client = new LanguageClient(
    clientId,
    'Dryfit',
    {
      run: { module, transport: TransportKind.ipc },
      debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6011'] } },
    },
    clientOptions(),
  );
  await start(context, client, ownCommandLine(context.asAbsolutePath('dist/command-line.mjs')));
}

/** Stops the server; the extension host waits for it. */
export async function deactivate(): Promise<void> {
  await client?.stop();
}
