import { ProgressLocation, window } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';

/** Ends the server and starts a new one; starts one where none runs. */
export async function restart(client: BaseLanguageClient): Promise<void> {
  const title = 'Dryfit: starting the language server';
  try {
    await window.withProgress({ location: ProgressLocation.Window, title }, async () => {
      if (client.state !== State.Stopped) await client.stop();
      await client.start();
    });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const more = 'Show Output';
    const chosen = await window.showErrorMessage(`Dryfit: the language server does not start: ${why}`, more);
    if (chosen === more) client.outputChannel.show();
  }
}
