import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { serveCheckPages } from './checks/pages.js';
import { registerCommands } from './commands/commands.js';
import { answerFileRequests } from './file-requests.js';
import { fitStatesOf } from './fit-states.js';
import { registerViews } from './panel/views.js';
import { registerStatus } from './status/item.js';
import type { CommandLine } from './tasks/command-line.js';
import { registerTasks } from './tasks/provider.js';

/**
 * What the extension does around its client, on a desktop and in a browser alike.
 * @param commandLine how tasks are run, where programs can be started
 */
export async function start(
  context: ExtensionContext,
  client: BaseLanguageClient,
  commandLine?: CommandLine,
): Promise<void> {
  const states = fitStatesOf(client);
  context.subscriptions.push(states);
  answerFileRequests(client);
  registerViews(context, client, states, commandLine);
  context.subscriptions.push(
    serveCheckPages(context),
    registerCommands(context, client, commandLine),
    registerStatus(client, states),
    registerTasks(commandLine),
  );
  await client.start();
}
