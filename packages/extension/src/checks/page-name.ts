/** Scheme of the addresses of the checks' pages: `dryfit-check:/slot-near-edge.md`. */
export const PAGES = 'dryfit-check';

/** File name of a page by the path of its address; undefined for whatever is not one name of a check. */
export function pageName(path: string): string | undefined {
  return /^\/([a-z0-9]+(?:-[a-z0-9]+)*\.md)$/.exec(path)?.[1];
}
