import { type ExtensionContext, Uri, window, workspace } from 'vscode';
import { languageId } from '../client-options.js';
import { onePage } from './one-page.js';

/** The cabinet of the walkthrough, and the shop it is made in. */
const CABINET = 'periodicals-rack.joinery';
const SHOP = 'workshop.joinery';

/** Writes the example into the folder, without touching a file that is there; without a folder, into a new text. */
export async function createExample({ extensionUri }: ExtensionContext): Promise<void> {
  const text = async (file: string) =>
    new TextDecoder().decode(await workspace.fs.readFile(Uri.joinPath(extensionUri, 'example', file)));
  const texts = { [SHOP]: await text(SHOP), [CABINET]: await text(CABINET) };
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const written = folder && (await writeInto(folder, texts));
  const document = written
    ? await workspace.openTextDocument(Uri.joinPath(folder, CABINET))
    : await workspace.openTextDocument({ language: languageId, content: onePage(texts[CABINET], texts[SHOP]) });
  await window.showTextDocument(document);
}

/** Writes the texts that are not there yet; false, and says why, if the folder takes none. */
async function writeInto(folder: Uri, texts: Readonly<Record<string, string>>): Promise<boolean> {
  try {
    for (const [name, text] of Object.entries(texts)) {
      const file = Uri.joinPath(folder, name);
      const there = await Promise.resolve(workspace.fs.stat(file)).catch(() => undefined);
      if (!there) await workspace.fs.writeFile(file, new TextEncoder().encode(text));
    }
    return true;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    void window.showWarningMessage(
      `Dryfit: the folder takes no new file (${why}), so the example stands in a text of its own.`,
    );
    return false;
  }
}
