import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The `source` condition lets a test run against src/ without a build.
const conditions = ['source', 'module', 'node', 'import', 'default'];

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', 'tests/workbench/**'],
  },
});
