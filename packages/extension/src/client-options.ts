import type { LanguageClientOptions } from 'vscode-languageclient';

/** Id shared by the language client, the output channel and the language contribution. */
export const languageId = 'joinery';

/** Options both clients share; every URI scheme is served, so that virtual folders work too. */
export const clientOptions: LanguageClientOptions = {
  documentSelector: [{ language: languageId }],
};
