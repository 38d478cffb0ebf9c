import { LIBRARY_SCHEME, libraryNames } from '../library/library.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';

/** The quoted name that is begun where a text ends, if an import is: the offset of what stands behind its quote. */
export function importBegun(line: string): number | undefined {
  const match = /(?:^|\s)import\s*"([^"\r\n]*)$/.exec(line);
  return match ? line.length - (match[1]?.length ?? 0) : undefined;
}

/** Files near this one, and the parts of the built-in library; those that are imported already are left out. */
export function importOffers({ file, around, offset }: Situation, quoted: boolean): Offer[] {
  const before = new Set(
    file.imports
      .filter(({ $cstNode: cst }) => !(cst && cst.offset <= offset && offset <= cst.end))
      .map(({ path }) => path),
  );
  const near = [...around.imports()].sort((a, b) => steps(a) - steps(b) || a.localeCompare(b));
  const files = near.map((path) => ({ path, rank: RANK.fits, detail: undefined }));
  const library = libraryNames.map((name) => ({
    path: `${LIBRARY_SCHEME}:${name}`,
    rank: RANK.also,
    detail: 'comes with the language',
  }));
  return [...files, ...library]
    .filter(({ path }) => !before.has(path))
    .map(({ path, rank, detail }) => ({ label: quoted ? path : `"${path}"`, kind: 'file', rank, detail }));
}

const steps = (path: string): number => path.split('/').length;

/** A file as another one names it: `../shop.joinery`; undefined where no path leads there. */
export function pathBetween(from: string, to: string): string | undefined {
  const [here, there] = [from.split('/'), to.split('/')];
  if (here[0] !== there[0]) return undefined;
  let same = 0;
  while (same < here.length - 1 && same < there.length - 1 && here[same] === there[same]) same += 1;
  return [...here.slice(same, -1).map(() => '..'), ...there.slice(same)].join('/');
}
