import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { extension, manifest, root } from './manifest.js';

const vsix = join(root, `.cache/dryfit-${manifest.version}.vsix`);
let names: readonly string[] = [];
let text: (name: string) => string;

beforeAll(() => {
  execFileSync(process.execPath, [join(root, '.scripts/package.mjs')], { cwd: root, stdio: 'pipe' });
  const files = unzipSync(readFileSync(vsix));
  names = Object.keys(files).sort();
  text = (name) => new TextDecoder().decode(files[name]);
});

/** Everything that may be inside: bundles, what they show, and the words about it. */
const wanted = [
  /^(extension\.vsixmanifest|\[Content_Types\]\.xml)$/,
  /^extension\/(package\.json|language-configuration\.json|readme\.md|changelog\.md|LICENSE(\.txt)?)$/i,
  /^extension\/dist\/(desktop\.cjs|web\.js|server\.cjs|server-worker\.js|command-line\.mjs|third-party\.txt)$/,
  /^extension\/dist\/later\/(highs\.(mjs|wasm)|(pdfkit|sequence)\.mjs)$/,
  /^extension\/dist\/webview\/[\w-]+\.(js|css)$/,
  /^extension\/dist\/checks\/[a-z0-9-]+\.md$/,
  /^extension\/example\/[\w-]+\.joinery$/,
  /^extension\/icons\/[\w-]+\.(svg|png)$/,
  /^extension\/snippets\/joinery\.json$/,
  /^extension\/syntaxes\/joinery\.tmLanguage\.json$/,
  /^extension\/walkthrough\/[\w-]+\.(svg|md)$/,
];

test('only bundles and assets are inside, and each kind of them', () => {
  expect(names.filter((name) => !wanted.some((kind) => kind.test(name)))).toEqual([]);
  expect(wanted.filter((kind) => !names.some((name) => kind.test(name)))).toEqual([]);
});

test('it stays under 4 MB, the solver in it once', () => {
  expect(statSync(vsix).size).toBeLessThan(4_000_000);
  expect(names.filter((name) => name.endsWith('.wasm'))).toEqual(['extension/dist/later/highs.wasm']);
});

test('the command line inside plans, solves and prints with nothing but what is inside', () => {
  const folder = mkdtempSync(join(tmpdir(), 'dryfit-shipped-'));
  try {
    for (const [name, bytes] of Object.entries(unzipSync(readFileSync(vsix)))) {
      if (!/^extension\/(dist\/(command-line\.mjs|later\/)|package\.json)/.test(name)) continue;
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), bytes);
    }
    const run = (...args: readonly string[]) =>
      execFileSync(process.execPath, [join(folder, 'extension/dist/command-line.mjs'), ...args], {
        cwd: join(root, 'examples'),
        stdio: 'pipe',
      }).toString();
    // Covers are solved in whole numbers.
    expect(run('patterns', 'bookcase.joinery')).toContain('1 pattern serves');
    expect(run('sheets', 'periodicals.joinery', '--out', join(folder, 'out'))).toContain('sheets.pdf');
    expect(readFileSync(join(folder, 'out/job-Library/sheets/sheets.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('every check has its page inside', () => {
  const pages = ['engine', 'language'].flatMap((name) =>
    readdirSync(join(root, `packages/${name}/src/checks`)).filter((file) => file.endsWith('.md')),
  );
  const inside = names.filter((name) => name.includes('/checks/')).map((name) => name.replace(/.*\//, ''));
  expect(inside).toEqual(pages.sort());
});

test('every file that the manifest names is inside', () => {
  const shipped = text('extension/package.json');
  const named = [...shipped.matchAll(/"(?:\.\/)?((?:dist|icons|snippets|syntaxes|walkthrough)\/[\w./-]+\.\w+)"/g)];
  expect(named.length).toBeGreaterThan(8);
  for (const [, file] of named) expect(names).toContain(`extension/${file}`);
});

test('the colours inside are those of the repository', () => {
  const own = readFileSync(join(root, 'syntaxes/joinery.tmLanguage.json'), 'utf8');
  expect(text('extension/syntaxes/joinery.tmLanguage.json')).toBe(own);
});

test('whose code is inside is said, with the licence', () => {
  const notices = text('extension/dist/third-party.txt');
  for (const name of ['langium', 'preact', 'vscode-languageclient', 'chevrotain'])
    expect(notices).toMatch(new RegExp(`^${name} \\d`, 'm'));
});

test('no bundle asks for a source map that is not there', () => {
  const asking = names.filter(
    (name) => /\.[cm]?js$/.test(name) && /^\/\/# sourceMappingURL=(?!data:)/m.test(text(name)),
  );
  expect(asking).toEqual([]);
});

test('the sources of the extension are not shipped', () => {
  expect(readdirSync(join(extension, 'src')).length).toBeGreaterThan(0);
  expect(names.filter((name) => /\.tsx?$|\.map$/.test(name))).toEqual([]);
});
