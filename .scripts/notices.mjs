import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from './root.mjs';

/** Names, versions and licence texts of the packages whose code stands in bundles, from esbuild's metafiles. */
export function notices(metafiles) {
  const folders = new Set(
    metafiles
      .flatMap(({ inputs }) => Object.keys(inputs))
      .filter((file) => file.includes('node_modules/'))
      .map((file) => packageOf(join(root, file))),
  );
  const entries = [...folders].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e(\.(txt|md))?$/i.test(entry));
    // Without a file, its own word for the licence is all that the package gives.
    const text = file === undefined ? `Licence: ${license}` : readFileSync(join(folder, file), 'utf8').trim();
    return { name, text: `${name} ${version}\n\n${text}\n` };
  });
  const head = 'The extension holds code of these packages, each under its own licence.\n';
  const byName = entries.sort((a, b) => (a.name < b.name ? -1 : 1)).map(({ text }) => text);
  return [head, ...byName].join(`\n${'-'.repeat(80)}\n\n`).replaceAll('\r\n', '\n');
}

/** The nearest folder above a file whose package.json has a name and a version. */
function packageOf(file) {
  for (let folder = dirname(file); folder !== dirname(folder); folder = dirname(folder)) {
    const manifest = join(folder, 'package.json');
    if (!existsSync(manifest)) continue;
    const { name, version } = JSON.parse(readFileSync(manifest, 'utf8'));
    if (name !== undefined && version !== undefined) return folder;
  }
  throw new Error(`${file} belongs to no package`);
}
