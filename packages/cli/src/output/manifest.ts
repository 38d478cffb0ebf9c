import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Name of the file that says what stands in a folder because of which source. */
export const MANIFEST = 'dryfit-build.json';

/** For each source, by its path as seen from the folder, the files built from it. */
export type Manifest = Readonly<Record<string, readonly string[]>>;

/** What earlier builds wrote into a folder; empty where there was none, or where the record cannot be trusted. */
export function readManifest(folder: string): Manifest {
  try {
    const { format, sources } = JSON.parse(readFileSync(join(folder, MANIFEST), 'utf8'));
    if (format !== 'dryfit-build' || typeof sources !== 'object' || sources === null) return {};
    const entries = Object.entries(sources as Record<string, unknown>);
    return Object.fromEntries(
      entries.map(([source, files]) => [source, Array.isArray(files) ? files.filter(isOurs) : []]),
    );
  } catch {
    return {};
  }
}

export function manifestText(manifest: Manifest): string {
  const sources = Object.fromEntries(
    Object.entries(manifest)
      .filter(([, files]) => files.length > 0)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
  return `${JSON.stringify({ format: 'dryfit-build', version: 1, sources }, undefined, 2)}\n`;
}

/**
 * True for a path that a command could have written: a folder, and in it a table, a strip or a folder of drawings, sheets or
 * a glue-up; nothing that climbs.
 */
function isOurs(path: unknown): path is string {
  const known =
    /^[^./\\:][^/\\:]*\/([a-z]+\.(csv|md|json)|[^./\\:][^/\\:]*\.(html|pdf)|(drawings|sheets|glue-up|remakes)\/[^./\\:][^/\\:]*\.(svg|md|html|pdf))$/;
  return typeof path === 'string' && known.test(path);
}
