import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Folder that holds the packages. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** The `source` condition lets a test run against src/ without a build. */
export const conditions = ['source', 'module', 'node', 'import', 'default'];

/** The usual report, then one line that .ci/run adds up. */
export const reporters = ['default', fileURLToPath(new URL('count-reporter.ts', import.meta.url))];

/** Every test that npm alone can run. */
export default defineConfig({
  root,
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', 'tests/workbench/**', 'tests/editors/**'],
    // Langium's editor services name exports of a CommonJS package that Node cannot see; bundles can, and so can vitest.
    server: { deps: { inline: [/[\\/]langium[\\/]lib[\\/]lsp[\\/]/] } },
    // A baseline that is missing is a failure; `npm run baselines` writes them.
    update: 'none',
    // No test is about time: a busy machine must not fail one.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 60_000 } },
    reporters,
  },
});
