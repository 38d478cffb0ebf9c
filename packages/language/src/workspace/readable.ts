/** Why a file that is there cannot be read, in words that stand behind "cannot be read:". */
export class Unreadable extends Error {}

/** Bytes: far above any cabinet anybody writes; below what would keep a machine busy for minutes. */
const MOST_BYTES = 8 * 1024 * 1024;

/**
 * Refuses to open what never ends, as a pipe nobody writes to, and what is far larger than any cabinet.
 * @throws Unreadable
 */
export function mayBeRead({ isFile, size }: { readonly isFile: boolean; readonly size: number }): void {
  if (!isFile) throw new Unreadable('it is not a regular file');
  const mebibytes = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
  if (size > MOST_BYTES)
    throw new Unreadable(`it is ${mebibytes(size)} MiB large, and the most is ${mebibytes(MOST_BYTES)}`);
}

/**
 * The text that bytes are, without a byte order mark.
 * @throws Unreadable if they are no UTF-8 text
 */
export function textOfBytes(bytes: Uint8Array): string {
  if (bytes.includes(0)) throw new Unreadable('it is not a text file (it holds zero bytes)');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Unreadable('it is not UTF-8 text; save it as UTF-8');
  }
}
