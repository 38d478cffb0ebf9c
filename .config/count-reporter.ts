import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one line `N passed, N failed` that .ci/run can add up; a file that cannot be loaded is a failure. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let passed = 0;
    let failed = 0;
    for (const module of modules) {
      const states = [...module.children.allTests()].map((test) => test.result().state);
      passed += states.filter((state) => state === 'passed').length;
      const fallen = states.filter((state) => state === 'failed').length;
      failed += fallen > 0 || module.ok() ? fallen : 1;
    }
    // The default reporter prints its summary in the same hook; ours has to be the last line.
    process.once('exit', () => process.stdout.write(`${passed} passed, ${failed} failed\n`));
  }
}
