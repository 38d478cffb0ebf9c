// Names that Windows keeps for devices, whatever ending they have.
const DEVICES = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])$/i;
const LONGEST = 80;

/**
 * A folder name made from any words: letters, digits, dots inside, hyphens and underscores stay, everything else
 * becomes a hyphen. Never empty, never `.` or `..`, never a device, never with a slash.
 */
export function folderName(words: string): string {
  const name = words
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}._-]+/gu, '-')
    .replace(/\.{2,}/g, '.')
    .replace(/^[-.]+|[-.]+$/g, '')
    .slice(0, LONGEST)
    .replace(/[-.]+$/, '');
  if (name === '') return 'unnamed';
  return DEVICES.test(name.split('.')[0] as string) ? `_${name}` : name;
}

/** Folder names for several things: those alike, even on a disk that ignores case, are numbered in their order. */
export function folderNames(words: readonly string[]): string[] {
  const taken = new Set<string>();
  return words.map((word) => {
    const name = folderName(word);
    let unique = name;
    for (let n = 2; taken.has(unique.toLowerCase()); n += 1) unique = `${name}-${n}`;
    taken.add(unique.toLowerCase());
    return unique;
  });
}
