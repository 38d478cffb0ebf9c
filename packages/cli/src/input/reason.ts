const WORDS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EACCES: 'permission denied',
  EPERM: 'not permitted',
  EEXIST: 'something of that name is in the way',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of the path is not a folder',
  ELOOP: 'the links lead round in a circle',
  ENAMETOOLONG: 'the name is too long',
  ENOSPC: 'no space left on the disk',
  EROFS: 'the disk is read-only',
  EMFILE: 'too many files are open',
};

/** Why the system refused a file, in words. */
export function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  return (code !== undefined && WORDS[code]) || (error instanceof Error ? error.message : String(error));
}
