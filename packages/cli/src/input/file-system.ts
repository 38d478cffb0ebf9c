import type { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { textOf } from './read.js';

/**
 * The disk as the language reads it, imports included: a file that is no text, far too large, or a pipe that would
 * never end is refused as one named on the command line is.
 */
export class TextFiles extends NodeFileSystemProvider {
  override async readFile(uri: URI): Promise<string> {
    return textOf(uri.fsPath);
  }

  override readFileSync(uri: URI): string {
    return textOf(uri.fsPath);
  }
}
