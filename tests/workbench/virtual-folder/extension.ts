import {
  Disposable,
  EventEmitter,
  type ExtensionContext,
  type FileChangeEvent,
  FileChangeType,
  type FileStat,
  FileSystemError,
  FileType,
  type Uri,
  workspace,
} from 'vscode';

/** Texts by their names; put in when the extension is bundled. */
declare const FILES: Readonly<Record<string, string>>;

/** Keeps one flat folder of files in memory, as an editor that shows a repository or a server without a disk does. */
export function activate(context: ExtensionContext): void {
  const files = new Map<string, Uint8Array>(
    Object.entries(FILES).map(([name, text]) => [`/${name}`, new TextEncoder().encode(text)]),
  );
  const changed = new EventEmitter<FileChangeEvent[]>();
  const bytesOf = (uri: Uri): Uint8Array => {
    const bytes = files.get(uri.path);
    if (!bytes) throw FileSystemError.FileNotFound(uri);
    return bytes;
  };
  const statOf = (uri: Uri): FileStat =>
    uri.path === '/'
      ? { type: FileType.Directory, ctime: 0, mtime: 0, size: 0 }
      : { type: FileType.File, ctime: 0, mtime: 0, size: bytesOf(uri).length };
  const refuse = (uri: Uri): never => {
    throw FileSystemError.NoPermissions(uri);
  };
  context.subscriptions.push(
    workspace.registerFileSystemProvider('shelf', {
      onDidChangeFile: changed.event,
      watch: () => new Disposable(() => {}),
      stat: statOf,
      readDirectory: (uri) =>
        uri.path === '/' ? [...files.keys()].map((path) => [path.slice(1), FileType.File]) : refuse(uri),
      readFile: bytesOf,
      writeFile(uri, bytes) {
        files.set(uri.path, bytes);
        changed.fire([{ type: FileChangeType.Changed, uri }]);
      },
      createDirectory: refuse,
      delete: refuse,
      rename: refuse,
    }),
  );
}
