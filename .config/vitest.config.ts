import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Folder that holds the packages. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** The `source` condition lets a test run against src/ without a build. */
export const conditions = ['source', 'module', 'node', 'import', 'default'];

/** The usual report, then one line that .ci/run adds up. */
export const reporters = ['default', fileURLToPath(new URL('count-reporter.ts', import.meta.url))];

const EXCLUDED = ['**/node_modules/**', '**/dist/**', 'tests/workbench/**', 'tests/editors/**'];

/** Tests of what is pure, which load its modules once a process and not once a file: that took longer than most do. */
const TOGETHER = ['packages/{engine,language,output}/src/**/*.test.ts'];

/** Files among those that change for a while what is not theirs, a class or the clock. */
export const ALONE = [
  'packages/language/src/server/cures-ahead.test.ts',
  'packages/language/src/server/lenses-left.test.ts',
];

/** Every test that npm alone can run. */
export default defineConfig({
  root,
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    projects: [
      {
        extends: true,
        test: { name: 'together', include: TOGETHER, exclude: [...EXCLUDED, ...ALONE], isolate: false },
      },
      {
        extends: true,
        test: {
          name: 'apart',
          include: ['packages/{cli,extension}/src/**/*.test.ts', 'tests/**/*.test.ts', ...ALONE],
          exclude: EXCLUDED,
        },
      },
    ],
    // Langium's editor services name exports of a CommonJS package that Node cannot see; bundles can, and so can vitest.
    server: { deps: { inline: [/[\\/]langium[\\/]lib[\\/]lsp[\\/]/] } },
    // A baseline that is missing is a failure; `npm run baselines` writes them.
    update: 'none',
    // Where there are two cores, vitest would leave one idle.
    maxWorkers: '100%',
    // No test is about time: a busy machine must not fail one.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 60_000 } },
    reporters,
  },
});
