import { dirname, join, normalize } from 'node:path/posix';
import { describe, expect, test } from 'vitest';
import { codeOf, importsOf, type SourceFile, sourcesOf } from './sources.js';

/** What each package may name, besides its own files. Everything else is refused, so a new dependency is a decision. */
const mayImport: Record<string, RegExp> = {
  engine: /^(pure-rand\/(generator\/xoroshiro128plus|distribution\/uniformInt)|highs)$/,
  language: /^(@dryfit\/engine|langium(\/.*)?)$/,
  output: /^(@dryfit\/engine|@sinclair\/typebox(\/.*)?|uqr)$/,
  cli: /^(@dryfit\/(engine|language|output)|node:.*|commander|pdfkit|picocolors|langium(\/node)?)$/,
  extension:
    /^(@dryfit\/(engine|language|language\/protocol|output)|preact(\/.*)?|vscode|vscode-languageclient(\/.*)?)$/,
};

/** The one folder where the editor protocol is spoken; the rest takes and returns plain data. */
const protocolFolder = 'packages/language/src/server/';
/** What a server answers with, drawings and tables, is put together there as well. */
const protocol = /^(vscode-languageserver.*|node:.*|@dryfit\/output)$/;

/** The one file that starts a program, which an editor in a browser cannot: only the desktop's entry imports it. */
const starter = 'packages/extension/src/tasks/own-command-line.ts';

const impure =
  /\b(Date|process|fetch|Buffer|performance|crypto|setTimeout|setInterval|globalThis)\b|\bMath\s*\.\s*random\b/;

describe.each(Object.keys(mayImport))('layer %s', (name) => {
  const sources = sourcesOf(name);

  test('has sources', () => {
    expect(sources.length).toBeGreaterThan(0);
  });

  test('imports only what its layer allows', () => {
    expect(sources.flatMap((source) => refusedImports(name, source))).toEqual([]);
  });
});

test('only the desktop can start a program', () => {
  const importing = sourcesOf('extension').filter(({ path, imports }) =>
    imports.some((imported) => normalize(join(dirname(path), imported)).replace(/\.js$/, '.ts') === starter),
  );
  expect(importing.map(({ path }) => path)).toEqual(['packages/extension/src/main-desktop.ts']);
});

test('the engine has no clock, no randomness, no network and no machine', () => {
  const found = sourcesOf('engine').flatMap(({ path, text }) => {
    const word = impure.exec(codeOf(text))?.[0];
    return word === undefined ? [] : [`${path}: ${word}`];
  });
  expect(found).toEqual([]);
});

describe('the reader of imports', () => {
  test('sees every form', () => {
    const text = `import a from 'a';\nimport type {\n  B,\n} from "b";\nimport 'c';\nexport * from 'd';\nconst e = await import('e');\ntype F = import('f').F;\nrequire("g");`;
    expect(importsOf(text).sort()).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g']);
  });

  test('refuses what leaves the package or the layer', () => {
    const source = {
      path: 'packages/engine/src/a/b.ts',
      text: '',
      imports: ['../c.js', '../../../language/src/d.js', 'node:fs'],
    };
    expect(refusedImports('engine', source)).toHaveLength(2);
  });

  test('takes words of comments and strings for what they are', () => {
    expect(impure.test(codeOf("// Date\nconst a = 'process'; /* fetch */"))).toBe(false);
    expect(impure.test(codeOf('const a = new Date();'))).toBe(true);
    expect(impure.test(codeOf('Math.random()'))).toBe(true);
  });
});

function refusedImports(name: string, { path, imports }: SourceFile): string[] {
  return imports.filter((imported) => !allowed(name, path, imported)).map((imported) => `${path}: ${imported}`);
}

function allowed(name: string, path: string, imported: string): boolean {
  if (imported.startsWith('.')) return normalize(join(dirname(path), imported)).startsWith(`packages/${name}/src/`);
  if (path.startsWith(protocolFolder) && protocol.test(imported)) return true;
  if (path === starter && imported === 'node:child_process') return true;
  return mayImport[name]?.test(imported) ?? false;
}
