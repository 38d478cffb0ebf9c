import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load } from '../load.mjs';
import { root } from '../root.mjs';

export const name = 'broken examples';
export const paths = ['examples/broken'];

const folders = ['packages/engine/src/checks', 'packages/language/src/checks'];

/** One file a check: the first example of its page that fails, with the page's words on what is wrong above it. */
export async function write(into) {
  const { examplesOf } = await load(join(root, 'tests/checks/page.ts'));
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  for (const folder of folders.map((path) => join(root, path)).filter((path) => existsSync(path))) {
    for (const file of readdirSync(folder).filter((entry) => entry.endsWith('.md'))) {
      const page = readFileSync(join(folder, file), 'utf8');
      const example = examplesOf(page).find(({ kind }) => kind === 'fails');
      // A fault of a check itself: no text is known that shows it.
      if (!example && file === 'check-failed.md') continue;
      if (!example) throw new Error(`${folder}/${file} has no example that fails`);
      const code = file.slice(0, -'.md'.length);
      writeFileSync(join(out, `${code}.joinery`), broken(code, page, example.text));
    }
  }
}

function broken(code, page, text) {
  const sentence =
    page
      .split(/\r?\n\s*\r?\n/)[1]
      ?.trim()
      .split(/\r?\n/) ?? [];
  const head = [
    `// ${code}, written by \`npm run generate\` from the check's page:`,
    ...sentence.map((line) => `// ${line}`),
  ];
  return `${head.join('\n')}\n${text.replace(/^(\s*import\s+")(?!\.\.?\/|dryfit:)/gm, '$1../')}`;
}
