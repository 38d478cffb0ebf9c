import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { serveCheckPages } from './checks/pages.js';
import { registerCommands } from './commands/commands.js';
import { answerFileRequests } from './file-requests.js';
import { fitStatesOf } from './fit-states.js';
import { registerViews } from './panel/views.js';
import { registerStatus } from './status/item.js';
import { registerTasks } from './tasks/provider.js';

/** What the extension does around its client, on a desktop and in a browser alike. */
export async function start(context: ExtensionContext, client: BaseLanguageClient): Promise<void> {
  const states = fitStatesOf(client);
  context.subscriptions.push(states);
  answerFileRequests(client);
  registerViews(context, client, states);
  context.subscriptions.push(
    serveCheckPages(context),
    registerCommands(context, client),
    registerStatus(client, states),
    registerTasks(),
  );
  await client.start();
}
