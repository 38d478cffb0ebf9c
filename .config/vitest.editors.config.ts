import { defineConfig } from 'vitest/config';
import { reporters, root } from './vitest.config.js';

/** The language server in other editors, by the settings that the README gives: npm run test:editors. */
export default defineConfig({
  root,
  test: { include: ['tests/editors/**/*.test.ts'], fileParallelism: false, testTimeout: 300_000, reporters },
});
