import { relative, sep } from 'node:path';

/** How a file is called in what is printed: from the folder the command runs in, always with slashes. */
export const shownName = (file: string, cwd: string): string => (relative(cwd, file) || file).split(sep).join('/');
