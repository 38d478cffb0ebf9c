import { FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

interface Asked {
  readonly uri: string;
}

/** One file or folder as the server reads it. */
interface Entry {
  readonly uri: string;
  readonly isFile: boolean;
  readonly isDirectory: boolean;
}

/**
 * Answers the server's questions about files that only the editor can read: those of virtual folders, and all files
 * where the server is a web worker. Reads only; null means that there is no such file.
 */
export function answerFileRequests(client: BaseLanguageClient): void {
  client.onRequest('joinery/readFile', ({ uri }: Asked) =>
    orNull(async () => new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri)))),
  );
  client.onRequest('joinery/stat', ({ uri }: Asked) =>
    orNull(async () => entry(uri, (await workspace.fs.stat(Uri.parse(uri))).type)),
  );
  client.onRequest('joinery/readDirectory', async ({ uri }: Asked) => {
    const folder = Uri.parse(uri);
    const found = await orNull(async () => await workspace.fs.readDirectory(folder));
    return (found ?? []).map(([name, type]) => entry(Uri.joinPath(folder, name).toString(), type));
  });
}

function entry(uri: string, type: FileType): Entry {
  return { uri, isFile: (type & FileType.File) !== 0, isDirectory: (type & FileType.Directory) !== 0 };
}

async function orNull<T>(read: () => Promise<T>): Promise<T | null> {
  try {
    return await read();
  } catch {
    return null;
  }
}
