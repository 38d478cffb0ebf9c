import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../root.mjs';

export const name = 'summaries of the checks';
export const paths = ['packages/language/src/hover/generated'];

const folders = ['packages/engine/src/checks', 'packages/language/src/checks'];

/** What each check finds, as its page says below its title: the hover on a check's name shows it. */
export function write(into) {
  const pages = folders.flatMap((folder) =>
    readdirSync(join(root, folder))
      .filter((file) => file.endsWith('.md'))
      .map((file) => ({ code: file.slice(0, -'.md'.length), page: readFileSync(join(root, folder, file), 'utf8') })),
  );
  const lines = pages
    .map(({ code, page }) => [
      code,
      page
        .split(/\r?\n\s*\r?\n/)[1]
        ?.trim()
        .replace(/\s+/g, ' '),
    ])
    .filter(([, summary]) => summary !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([code, summary]) => `  ${JSON.stringify(code)}: ${JSON.stringify(summary)},`);
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  writeFileSync(
    join(out, 'summaries.ts'),
    [
      "// Written by `npm run generate` from the checks' pages.",
      '',
      '/** What each check finds, by its name. */',
      'export const summaries: Readonly<Record<string, string>> = {',
      ...lines,
      '};',
      '',
    ].join('\n'),
  );
}
