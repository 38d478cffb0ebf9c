import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root } from '../root.mjs';

export const name = 'checks in the setting of severities';
export const paths = ['packages/extension/package.json'];

const folders = ['packages/engine/src/checks', 'packages/language/src/checks'];

/** One property a check, so that the editor offers the names there are and underlines others. */
export function write(into) {
  const manifest = JSON.parse(readFileSync(join(root, paths[0]), 'utf8'));
  const checks = folders.flatMap((folder) =>
    readdirSync(join(root, folder))
      .filter((file) => file.endsWith('.md'))
      .map((file) => [file.slice(0, -'.md'.length), firstParagraph(join(root, folder, file))]),
  );
  checks.sort(([a], [b]) => (a < b ? -1 : 1));
  manifest.contributes.configuration.properties['dryfit.severity'].properties = Object.fromEntries(
    checks.map(([check, description]) => [check, { enum: ['error', 'warning', 'info', 'off'], description }]),
  );
  const file = join(into, paths[0]);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, `${JSON.stringify(manifest, null, 2)}\n`);
}

/** What a check finds, as its page says below its title. */
function firstParagraph(file) {
  const paragraph = readFileSync(file, 'utf8').split(/\r?\n\s*\r?\n/)[1];
  if (paragraph === undefined) throw new Error(`${file} does not say what the check finds`);
  return paragraph.trim().replace(/\s+/g, ' ').replaceAll('`', '');
}
