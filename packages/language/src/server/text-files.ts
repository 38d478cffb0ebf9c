import { readFile, stat } from 'node:fs/promises';
import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { mayBeRead, textOfBytes } from '../workspace/readable.js';

/**
 * The disk as a server in Node reads it: what the command line refuses to read is refused here too, so that no pipe
 * holds up a build and both find the same.
 */
export class TextFiles extends NodeFileSystemProvider {
  override async readFile(uri: URI): Promise<string> {
    const stats = await stat(uri.fsPath);
    mayBeRead({ isFile: stats.isFile(), size: stats.size });
    return textOfBytes(await readFile(uri.fsPath));
  }
}
