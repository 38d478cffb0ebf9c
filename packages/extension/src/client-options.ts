import { workspace } from 'vscode';
import type { LanguageClientOptions } from 'vscode-languageclient';

/** Id of the language contribution. */
export const languageId = 'joinery';

/** Id of the client: its output channel, and the section its setting `trace.server` is read from. */
export const clientId = 'dryfit';

/**
 * Options both clients share; every URI scheme is served, so that virtual folders work too.
 * @param later address of the folder of what a server in a browser loads late, with its last slash
 */
export const clientOptions = (later?: string): LanguageClientOptions => ({
  documentSelector: [{ language: languageId }],
  // Asked anew at every start: a server that is restarted begins with the settings of now.
  initializationOptions: () => ({ dryfit: { ...settings(), checkPages: true, later } }),
});

/** The settings as plain data: what the editor hands out cannot be posted to a worker as it is. */
const settings = (): object => JSON.parse(JSON.stringify(workspace.getConfiguration().get('dryfit') ?? {}));
