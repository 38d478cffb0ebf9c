import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  type CodeAction,
  createProtocolConnection,
  type Diagnostic,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type TextEdit,
} from 'vscode-languageserver-protocol/node';

const BUNDLE = fileURLToPath(new URL('../../packages/extension/dist/server.cjs', import.meta.url));

/** A folder on disk with files in it. */
export class Folder {
  readonly path = mkdtempSync(join(tmpdir(), 'lindwell-'));

  constructor(texts: Readonly<Record<string, string>> = {}) {
    for (const [name, text] of Object.entries(texts)) this.write(name, text);
  }

  write(name: string, text: string): void {
    const path = join(this.path, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }

  read = (name: string): string => readFileSync(join(this.path, name), 'utf8');
  delete = (name: string): void => rmSync(join(this.path, name), { recursive: true });
  uri = (name = ''): string => pathToFileURL(join(this.path, name)).href;
  remove = (): void => rmSync(this.path, { recursive: true, force: true });
}

export interface EditorOptions {
  /** Workspace folders, as names in the folder; the folder itself if absent, none if empty. */
  readonly folders?: readonly string[];
  /** The section `dryfit` of the settings. */
  readonly settings?: object;
  readonly initializationOptions?: object;
}

/** An editor that speaks the protocol over stdio with the server as it is shipped. */
export class Editor {
  /** What the server has told of each file last, by its name, and how often. */
  private readonly told = new Map<string, { diagnostics: readonly Diagnostic[]; times: number }>();
  private readonly texts = new Map<string, { text: string; version: number }>();
  private readonly waiting = new Set<() => void>();
  readonly messages: string[] = [];
  private settings: object;

  private constructor(
    readonly folder: Folder,
    private readonly server: ChildProcess,
    readonly connection: ProtocolConnection,
    settings: object,
  ) {
    this.settings = settings;
    connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: PublishDiagnosticsParams) => {
      const before = this.told.get(uri)?.times ?? 0;
      this.told.set(uri, { diagnostics, times: before + 1 });
      for (const look of [...this.waiting]) look();
    });
    connection.onNotification('window/showMessage', ({ message }: { message: string }) => {
      this.messages.push(message);
      for (const look of [...this.waiting]) look();
    });
    connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) =>
      items.map(() => this.settings),
    );
    connection.onRequest('client/registerCapability', () => null);
    connection.onRequest('workspace/inlayHint/refresh', () => null);
    connection.onRequest('workspace/codeLens/refresh', () => null);
  }

  static async start(folder: Folder, options: EditorOptions = {}): Promise<Editor> {
    const { folders = [''], settings = {}, initializationOptions = {} } = options;
    const server = spawn(process.execPath, [BUNDLE, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const connection = createProtocolConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    const editor = new Editor(folder, server, connection, settings);
    connection.listen();
    await connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities: {
        workspace: {
          configuration: true,
          didChangeConfiguration: { dynamicRegistration: true },
          didChangeWatchedFiles: { dynamicRegistration: true },
          workspaceFolders: true,
        },
        textDocument: { publishDiagnostics: { relatedInformation: true } },
      },
      workspaceFolders: folders.map((name) => ({ uri: folder.uri(name), name: name || 'all' })),
      initializationOptions,
    });
    await connection.sendNotification('initialized', {});
    return editor;
  }

  async open(name: string, text = this.folder.read(name)): Promise<void> {
    this.texts.set(name, { text, version: 1 });
    await this.notify('textDocument/didOpen', {
      textDocument: { uri: this.folder.uri(name), languageId: 'joinery', version: 1, text },
    });
  }

  /** Puts another text into an open file; on disk it stays as it is. */
  async type(name: string, text: string): Promise<void> {
    const version = (this.texts.get(name)?.version ?? 0) + 1;
    this.texts.set(name, { text, version });
    await this.notify('textDocument/didChange', {
      textDocument: { uri: this.folder.uri(name), version },
      contentChanges: [{ text }],
    });
  }

  textOf = (name: string): string => this.texts.get(name)?.text ?? this.folder.read(name);

  async close(name: string): Promise<void> {
    this.texts.delete(name);
    await this.notify('textDocument/didClose', { textDocument: { uri: this.folder.uri(name) } });
  }

  /** What the watcher of an editor tells of the disk. */
  async watched(changes: Readonly<Record<string, 'created' | 'changed' | 'deleted'>>): Promise<void> {
    const types = { created: 1, changed: 2, deleted: 3 };
    await this.notify('workspace/didChangeWatchedFiles', {
      changes: Object.entries(changes).map(([name, type]) => ({ uri: this.folder.uri(name), type: types[type] })),
    });
  }

  async set(settings: object): Promise<void> {
    this.settings = settings;
    await this.notify('workspace/didChangeConfiguration', { settings: { dryfit: settings } });
  }

  /** The names of the checks that have findings in a file, as told last; undefined if nothing was told yet. */
  codes = (name: string): readonly string[] | undefined =>
    this.told.get(this.folder.uri(name))?.diagnostics.map(({ code }) => String(code));
  diagnostics = (name: string): readonly Diagnostic[] => this.told.get(this.folder.uri(name))?.diagnostics ?? [];
  timesTold = (name: string): number => this.told.get(this.folder.uri(name))?.times ?? 0;

  /** Waits until what was told of a file is as wanted; the test's own time ends a wait in vain. */
  until(name: string, wanted: (codes: readonly string[]) => boolean): Promise<readonly string[]> {
    return this.when(() => {
      const codes = this.codes(name);
      return codes && wanted(codes) ? codes : undefined;
    });
  }

  when<T>(look: () => T | undefined): Promise<T> {
    return new Promise((resolve) => {
      const again = () => {
        const found = look();
        if (found === undefined) return;
        this.waiting.delete(again);
        resolve(found);
      };
      this.waiting.add(again);
      again();
    });
  }

  async fixes(name: string, code: string): Promise<readonly CodeAction[]> {
    const diagnostic = this.diagnostics(name).find((one) => one.code === code);
    if (!diagnostic) return [];
    return this.connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri: this.folder.uri(name) },
      range: diagnostic.range,
      context: { diagnostics: [diagnostic] },
    });
  }

  /** Makes the edits that an action has for one open file. */
  async apply(name: string, { edit }: CodeAction): Promise<void> {
    const edits = edit?.changes?.[this.folder.uri(name)] ?? [];
    await this.type(name, edited(this.textOf(name), edits));
  }

  async stop(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    if (this.server.exitCode === null) await once(this.server, 'exit');
    this.connection.dispose();
    this.folder.remove();
  }

  private notify = (method: string, params: object): Promise<void> => this.connection.sendNotification(method, params);
}

function edited(text: string, edits: readonly TextEdit[]): string {
  const lines = text.split('\n');
  const starts = lines.map((_, i) => lines.slice(0, i).reduce((sum, line) => sum + line.length + 1, 0));
  const offset = ({ line, character }: { line: number; character: number }) =>
    (starts[line] ?? text.length) + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)),
      text,
    );
}
