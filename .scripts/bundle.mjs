// Bundles the extension (client and language server, for the desktop and for the browser) and the command line, which
// starts in half the time when it is one file.
import { copyFileSync, cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { notices } from './notices.mjs';
import { root } from './root.mjs';

const extension = join(root, 'packages/extension');
const server = join(root, 'packages/language/src/server');
const shared = {
  bundle: true,
  conditions: ['source'],
  minify: true,
  sourcemap: true,
  metafile: true,
  logLevel: 'warning',
  loader: { '.joinery': 'text' },
  // Loaded when they are first wanted, by what plans and prints.
  external: ['highs', 'pdfkit'],
};
const node = { ...shared, platform: 'node', format: 'cjs', target: 'node20' };
const browser = { ...shared, platform: 'browser', target: 'es2022', mainFields: ['browser', 'module', 'main'] };

const commandLine = {
  ...node,
  entryPoints: [join(root, 'packages/cli/src/main.ts')],
  format: 'esm',
  // What is written for CommonJS inside the bundle asks for Node's own modules by `require`.
  banner: { js: "import { createRequire } from 'node:module';\nconst require = createRequire(import.meta.url);" },
};

/** What the shipped command line loads only when it plans or prints; it lies beside it and holds all that it needs. */
const later = join(extension, 'dist/later');
const foundIn = (folder) => ({
  name: 'from-later',
  setup(shippedBuild) {
    shippedBuild.onResolve({ filter: /^(highs|pdfkit)$/ }, ({ path }) => ({
      path: `${folder}/${path}.mjs`,
      external: true,
    }));
  },
});
const pdf = `import PDFDocument, { registerStdFonts } from 'pdfkit';
import Helvetica from 'pdfkit/standard-fonts/Helvetica';
import HelveticaBold from 'pdfkit/standard-fonts/HelveticaBold';
registerStdFonts(Helvetica, HelveticaBold);
export default PDFDocument;`;
rmSync(later, { recursive: true, force: true });
mkdirSync(later, { recursive: true });
for (const file of ['highs.mjs', 'highs.wasm'])
  copyFileSync(join(root, 'node_modules/highs/build', file), join(later, file));
const ownLater = join(root, 'packages/cli/dist/later');
/** Puts set-ups in order beside a server, in Node and in a browser alike. */
const thread = {
  ...shared,
  format: 'esm',
  target: 'es2022',
  platform: 'neutral',
  mainFields: ['module', 'main'],
  sourcemap: false,
  external: ['node:worker_threads', 'highs'],
  entryPoints: [join(server, 'main-thread.ts')],
};
const solver = { inputs: { 'node_modules/highs/build/highs.mjs': {} } };

const [, ...shipped] = await Promise.all([
  build({ ...commandLine, outfile: join(root, 'packages/cli/dist/dryfit.js'), minify: false }),
  build({
    ...commandLine,
    outfile: join(extension, 'dist/command-line.mjs'),
    external: [],
    plugins: [foundIn('./later')],
  }),
  build({
    ...browser,
    format: 'esm',
    external: [],
    sourcemap: false,
    stdin: { contents: pdf, resolveDir: join(root, 'packages/cli') },
    outfile: join(later, 'pdfkit.mjs'),
  }),
  build({
    ...thread,
    outfile: join(later, 'sequence.mjs'),
    external: ['node:worker_threads'],
    plugins: [foundIn('.')],
  }),
  build({ ...thread, outfile: join(ownLater, 'sequence.mjs') }),
  build({
    ...node,
    entryPoints: [join(extension, 'src/main-desktop.ts')],
    outfile: join(extension, 'dist/desktop.cjs'),
    external: ['vscode', 'highs', 'pdfkit'],
  }),
  build({ ...node, entryPoints: [join(server, 'main-node.ts')], outfile: join(extension, 'dist/server.cjs') }),
  build({
    ...browser,
    format: 'cjs',
    entryPoints: [join(extension, 'src/main-web.ts')],
    outfile: join(extension, 'dist/web.js'),
    external: ['vscode', 'highs', 'pdfkit'],
  }),
  build({
    ...browser,
    format: 'iife',
    entryPoints: [join(server, 'main-browser.ts')],
    outfile: join(extension, 'dist/server-worker.js'),
  }),
  build({
    ...browser,
    format: 'iife',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    // A page's source map is not shipped, so the page must not ask for one.
    sourcemap: false,
    entryPoints: {
      drawing: join(extension, 'src/webview/drawing/main.tsx'),
      slots: join(extension, 'src/webview/slots/main.tsx'),
      plan: join(extension, 'src/webview/plan/main.tsx'),
      panels: join(extension, 'src/webview/panels.css'),
    },
    outdir: join(extension, 'dist/webview'),
  }),
]);
writeFileSync(join(extension, 'dist/third-party.txt'), notices([solver, ...shipped.map(({ metafile }) => metafile)]));
mkdirSync(join(extension, 'syntaxes'), { recursive: true });
copyFileSync(join(root, 'syntaxes/joinery.tmLanguage.json'), join(extension, 'syntaxes/joinery.tmLanguage.json'));

// The page of every check, for reading offline.
const pages = join(extension, 'dist/checks');
rmSync(pages, { recursive: true, force: true });
for (const folder of ['engine', 'language']) {
  const from = join(root, 'packages', folder, 'src/checks');
  const filter = (path) => path === from || path.endsWith('.md');
  cpSync(from, pages, { recursive: true, filter });
}
// The server that other editors start is the extension's own.
copyFileSync(join(extension, 'dist/server.cjs'), join(root, 'packages/cli/dist/language-server.cjs'));
