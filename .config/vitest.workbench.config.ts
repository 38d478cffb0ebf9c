import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { reporters, root } from './vitest.config.js';

/** The packaged extension in a real workbench and a real browser: npm run test:e2e. */
export default defineConfig({
  root,
  test: {
    include: ['tests/workbench/**/*.test.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    // A machine that is busy takes its time to answer.
    expect: { poll: { timeout: 60_000, interval: 100 } },
    hookTimeout: 300_000,
    reporters: [
      ...reporters,
      [
        fileURLToPath(new URL('scenario-reporter.ts', import.meta.url)),
        { list: fileURLToPath(new URL('../tests/workbench/scenarios.txt', import.meta.url)) },
      ],
    ],
  },
});
