import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';

/** How a server is started and told about its files. */
export interface Server {
  readonly name: string;
  readonly args: readonly string[];
  readonly languageId: string;
  readonly initializationOptions?: unknown;
  /** By section; what the server asks the client for. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

interface Diagnostics {
  readonly uri: string;
  readonly version?: number | null;
  readonly diagnostics: readonly unknown[];
}

/** A text that is open in a server, edited in place. */
export class Open {
  version = 1;
  constructor(
    readonly uri: string,
    public text: string,
  ) {}

  position(offset: number): { line: number; character: number } {
    const before = this.text.slice(0, offset).split('\n');
    return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  }
}

const LIMIT = 120_000;
const TICKS_PER_SECOND = 100;

/** One run of a server over its standard streams. */
export class Session {
  private readonly waiting = new Set<(told: Diagnostics) => void>();

  private constructor(
    private readonly server: Server,
    private readonly child: ChildProcess,
    private readonly connection: MessageConnection,
  ) {
    connection.onNotification('textDocument/publishDiagnostics', (told: Diagnostics) => {
      for (const waiter of this.waiting) waiter(told);
    });
    connection.onRequest('workspace/configuration', ({ items }: { items: readonly { section?: string }[] }) =>
      items.map(({ section = '' }) => server.settings?.[section] ?? null),
    );
    for (const method of ['client/registerCapability', 'client/unregisterCapability', 'window/workDoneProgress/create'])
      connection.onRequest(method, () => null);
    connection.onRequest(() => null);
    connection.onNotification(() => undefined);
  }

  static async start(server: Server, root: string): Promise<Session> {
    const child = spawn(process.execPath, [...server.args, '--stdio'], {
      cwd: root,
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    if (!child.stdout || !child.stdin) throw new Error('no streams');
    const connection = createMessageConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    const session = new Session(server, child, connection);
    connection.listen();
    const uri = pathToFileURL(root).href;
    await session.request('initialize', {
      processId: process.pid,
      rootUri: uri,
      workspaceFolders: [{ uri, name: 'lindwell' }],
      initializationOptions: server.initializationOptions ?? {},
      capabilities: {
        workspace: {
          configuration: true,
          workspaceFolders: true,
          didChangeConfiguration: { dynamicRegistration: true },
        },
        textDocument: {
          synchronization: { didSave: true },
          publishDiagnostics: { relatedInformation: true, versionSupport: true },
          hover: { contentFormat: ['markdown'] },
          completion: { completionItem: { snippetSupport: true }, contextSupport: true },
        },
        general: { positionEncodings: ['utf-16'] },
      },
    });
    await connection.sendNotification('initialized', {});
    if (server.settings)
      await connection.sendNotification('workspace/didChangeConfiguration', { settings: server.settings });
    return session;
  }

  request(method: string, params: unknown): Promise<unknown> {
    return limited(this.connection.sendRequest(method, params), `${this.server.name}: ${method}`);
  }

  /** Opens a file and waits until at least so many findings of it have been told. */
  async open(root: string, file: string, least: number): Promise<{ readonly open: Open; readonly found: number }> {
    const path = join(root, file);
    const open = new Open(pathToFileURL(path).href, readFileSync(path, 'utf8'));
    const told = this.told(open, (count) => count >= least);
    const { uri, version, text } = open;
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, version, text, languageId: this.server.languageId },
    });
    return { open, found: await told };
  }

  /** Puts text in the place of a stretch; the edit alone, without waiting. */
  async change(open: Open, start: number, end: number, text: string): Promise<void> {
    const range = { start: open.position(start), end: open.position(end) };
    open.text = open.text.slice(0, start) + text + open.text.slice(end);
    open.version += 1;
    await this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: open.uri, version: open.version },
      contentChanges: [{ range, text }],
    });
  }

  /** Number of findings told of a file, as soon as it is one that is waited for. */
  told(open: Open, wanted: (count: number) => boolean): Promise<number> {
    let waiter: (told: Diagnostics) => void;
    const promise = new Promise<number>((resolve) => {
      waiter = ({ uri, diagnostics }) => {
        if (decodeURIComponent(uri) === decodeURIComponent(open.uri) && wanted(diagnostics.length))
          resolve(diagnostics.length);
      };
      this.waiting.add(waiter);
    });
    return limited(promise, `${this.server.name}: findings`).finally(() => this.waiting.delete(waiter));
  }

  /** Resident memory, MB; Linux only, else not a number. */
  get memory(): number {
    return this.proc('status', (text) => Number(/VmRSS:\s+(\d+)/.exec(text)?.[1]) / 1024);
  }

  /** Processor time so far, ms; Linux only, else not a number. */
  get processor(): number {
    return this.proc('stat', (text) => {
      const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
      return ((Number(fields[11]) + Number(fields[12])) * 1000) / TICKS_PER_SECOND;
    });
  }

  async stop(): Promise<void> {
    const gone = new Promise((resolve) => this.child.once('exit', resolve));
    await Promise.race([this.connection.sendRequest('shutdown').catch(() => undefined), pause(2000)]);
    await this.connection.sendNotification('exit').catch(() => undefined);
    const ended = await Promise.race([gone.then(() => true), pause(1500).then(() => false)]);
    if (!ended) this.child.kill('SIGKILL');
    this.connection.dispose();
  }

  private proc(file: string, read: (text: string) => number): number {
    try {
      return read(readFileSync(`/proc/${this.child.pid}/${file}`, 'utf8'));
    } catch {
      return Number.NaN;
    }
  }
}

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => void setTimeout(resolve, milliseconds));

async function limited<T>(promise: Promise<T>, what: string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`${what}: nothing came within ${LIMIT / 1000} s`)), LIMIT);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}
