import { commands, Disposable, type ExtensionContext } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { explainCheck } from '../checks/explain.js';
import { createExample } from '../example/create.js';
import type { CommandLine } from '../tasks/command-line.js';
import { buildTables } from './build-tables.js';
import { checkFolder } from './check-folder.js';
import { restart } from './restart.js';

/** Every command but those of the drawing and the slot table, by the name package.json gives it. */
export function registerCommands(
  context: ExtensionContext,
  client: BaseLanguageClient,
  commandLine: CommandLine | undefined,
): Disposable {
  const handlers: Readonly<Record<string, (argument?: unknown) => unknown>> = {
    'dryfit.restartServer': () => restart(client),
    'dryfit.showOutput': () => client.outputChannel.show(),
    'dryfit.checkFolder': () => checkFolder(client),
    'dryfit.buildTables': () => buildTables(commandLine),
    'dryfit.explainCheck': (check) => explainCheck(context, check),
    'dryfit.createExample': () => createExample(context),
  };
  return Disposable.from(...Object.entries(handlers).map(([name, run]) => commands.registerCommand(name, run)));
}
