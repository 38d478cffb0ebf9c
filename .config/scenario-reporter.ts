import { readFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

/** The scenarios that have to run, one a line; what runs and is not listed is a failure as well. */
const listed = new URL('../tests/workbench/scenarios.txt', import.meta.url);

/** Says how many scenarios ran; one of the list that did not run fails the suite, unless only some were asked for. */
export default class ScenarioReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const wanted = readFileSync(listed, 'utf8')
      .split(/\r?\n/)
      .filter((line) => line !== '' && !line.startsWith('#'));
    const ran = new Set(
      modules.flatMap((module) =>
        [...module.children.allTests()]
          .filter((test) => ['passed', 'failed'].includes(test.result().state))
          .map((test) => test.fullName),
      ),
    );
    const missing = wanted.filter((name) => !ran.has(name));
    const unlisted = [...ran].filter((name) => !wanted.includes(name));
    const some = process.argv.some((word) => word === '-t' || word.startsWith('tests/workbench/'));
    if (some) {
      process.stdout.write(`${ran.size} of ${wanted.length} listed scenarios were asked for and ran\n`);
      return;
    }
    for (const name of missing) process.stdout.write(`did not run: ${name}\n`);
    for (const name of unlisted) process.stdout.write(`not in tests/workbench/scenarios.txt: ${name}\n`);
    process.stdout.write(`${ran.size} scenarios ran, ${wanted.length} are listed\n`);
    if (missing.length > 0 || unlisted.length > 0) process.exitCode = 1;
  }
}
