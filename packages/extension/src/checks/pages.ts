import { type Disposable, type ExtensionContext, Uri, workspace } from 'vscode';
import { PAGES, pageName } from './page-name.js';
import { pageText } from './page-text.js';

/**
 * Serves the pages of the checks, which lie in the extension, as documents that can only be read. The server links
 * each finding to its page by this scheme, so that it can be read offline and whatever the folder is made of.
 */
export function serveCheckPages({ extensionUri }: ExtensionContext): Disposable {
  return workspace.registerTextDocumentContentProvider(PAGES, {
    provideTextDocumentContent: async (uri) => {
      const name = pageName(uri.path);
      return name === undefined
        ? `No check is called ${uri.path}.`
        : read(Uri.joinPath(extensionUri, 'dist/checks', name));
    },
  });
}

/** Address of a check's page. */
export const pageOf = (check: string): Uri => Uri.from({ scheme: PAGES, path: `/${check}.md` });

async function read(file: Uri): Promise<string> {
  try {
    return pageText(new TextDecoder().decode(await workspace.fs.readFile(file)));
  } catch {
    return `This version of Dryfit has no page ${file.path.slice(file.path.lastIndexOf('/') + 1)}.`;
  }
}
