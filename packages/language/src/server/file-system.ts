import { type FileSystemNode, type FileSystemProvider, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';

/** Requests that a client may answer, so that files of virtual folders and of the browser can be read. */
const READ_FILE = 'joinery/readFile';
const READ_DIRECTORY = 'joinery/readDirectory';
const STAT = 'joinery/stat';

interface Entry {
  readonly uri: string;
  readonly isFile: boolean;
  readonly isDirectory: boolean;
}

/**
 * Files as the client sees them. Everything is asked for and waited for: the synchronous questions of the interface
 * have no answer here, and nothing in this server asks them.
 */
export class ClientFileSystem implements FileSystemProvider {
  constructor(private readonly connection: Connection) {}

  async readFile(uri: URI): Promise<string> {
    const text = await this.connection.sendRequest<string | null>(READ_FILE, { uri: uri.toString() });
    if (text === null) throw new Error(`${uri.toString()} cannot be read`);
    return text;
  }

  async readBinary(uri: URI): Promise<Uint8Array> {
    return new TextEncoder().encode(await this.readFile(uri));
  }

  async readDirectory(uri: URI): Promise<FileSystemNode[]> {
    const entries = await this.connection.sendRequest<Entry[]>(READ_DIRECTORY, { uri: uri.toString() });
    return entries.map(nodeOf);
  }

  async stat(uri: URI): Promise<FileSystemNode> {
    const entry = await this.connection.sendRequest<Entry | null>(STAT, { uri: uri.toString() });
    if (entry === null) throw new Error(`${uri.toString()} is not there`);
    return nodeOf(entry);
  }

  async exists(uri: URI): Promise<boolean> {
    return (await this.connection.sendRequest<Entry | null>(STAT, { uri: uri.toString() })) !== null;
  }

  existsSync(): boolean {
    return false;
  }

  statSync(uri: URI): FileSystemNode {
    throw later(uri);
  }

  readFileSync(uri: URI): string {
    throw later(uri);
  }

  readBinarySync(uri: URI): Uint8Array {
    throw later(uri);
  }

  readDirectorySync(): FileSystemNode[] {
    return [];
  }
}

const nodeOf = ({ uri, isFile, isDirectory }: Entry): FileSystemNode => ({ uri: URI.parse(uri), isFile, isDirectory });
const later = (uri: URI): Error => new Error(`${uri.toString()} can only be read by asking the client`);

/** Files of the disk from the disk, and all others from the client. */
export function diskAndClient(disk: FileSystemProvider, connection: Connection): FileSystemProvider {
  const client = new ClientFileSystem(connection);
  const of = (uri: URI): FileSystemProvider => (uri.scheme === 'file' ? disk : client);
  return {
    readFile: (uri) => of(uri).readFile(uri),
    readBinary: (uri) => of(uri).readBinary(uri),
    readDirectory: (uri) => of(uri).readDirectory(uri),
    stat: (uri) => of(uri).stat(uri),
    exists: (uri) => of(uri).exists(uri),
    readFileSync: (uri) => of(uri).readFileSync(uri),
    readBinarySync: (uri) => of(uri).readBinarySync(uri),
    readDirectorySync: (uri) => of(uri).readDirectorySync(uri),
    statSync: (uri) => of(uri).statSync(uri),
    existsSync: (uri) => of(uri).existsSync(uri),
  };
}
