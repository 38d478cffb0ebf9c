import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load } from '../load.mjs';
import { root } from '../root.mjs';

export const name = 'list and index of the checks';
export const paths = ['packages/engine/src/generated'];

const folder = join(root, 'packages/engine/src/checks');

/** A check is a page with a source file of the same name beside it; its export is the name in camel case. */
export async function write(into) {
  const codes = readdirSync(folder)
    .filter((file) => file.endsWith('.md'))
    .map((file) => file.slice(0, -'.md'.length))
    .sort();
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  writeFileSync(join(out, 'checks.ts'), listOf(codes));
  const checks = await Promise.all(codes.map((code) => load(join(folder, `${code}.ts`))));
  writeFileSync(
    join(out, 'checks.md'),
    indexOf(codes.map((code, at) => ({ code, check: checks[at][camelCase(code)] }))),
  );
}

function listOf(codes) {
  return [
    '// Written by `npm run generate` from the files in the folder `checks`.',
    "import type { Check } from '../checks/check.js';",
    ...codes.map((code) => `import { ${camelCase(code)} } from '../checks/${code}.js';`),
    '',
    '/** Every check, in the order of their names. */',
    'export const checks: readonly Check[] = [',
    ...codes.map((code) => `  ${camelCase(code)},`),
    '];',
    '',
  ].join('\n');
}

function indexOf(found) {
  const rows = found.map(({ code, check }) => {
    if (check?.code !== code)
      throw new Error(`checks/${code}.ts does not export ${camelCase(code)} with the code ${code}`);
    return `| [${code}](../checks/${code}.md) | ${check.severity} | ${firstSentence(code)} |`;
  });
  const head = ['# Checks', '', '<!-- Written by `npm run generate` from the pages in the folder `checks`. -->', ''];
  return [...head, '| Check | Severity | What it finds |', '| --- | --- | --- |', ...rows, ''].join('\n');
}

/** The first paragraph under the page's title. */
function firstSentence(code) {
  const page = readFileSync(join(folder, `${code}.md`), 'utf8');
  const paragraph = page.split(/\r?\n\s*\r?\n/)[1];
  if (!page.startsWith(`# ${code}`) || paragraph === undefined) {
    throw new Error(`checks/${code}.md has to begin with "# ${code}" and a paragraph that says what it finds`);
  }
  return paragraph.trim().replace(/\s+/g, ' ').replaceAll('|', '\\|');
}

function camelCase(code) {
  return code.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());
}
