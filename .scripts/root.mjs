import { fileURLToPath } from 'node:url';

/** Folder that holds the packages, with its closing separator. */
export const root = fileURLToPath(new URL('..', import.meta.url));
