import { readFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

export interface ScenarioOptions {
  /** File of the scenarios that have to run, one a line; what runs and is not listed is a failure as well. */
  readonly list: string;
}

/** Says how many scenarios ran; one of the list that did not run fails the suite, unless only some were asked for. */
export default class ScenarioReporter implements Reporter {
  constructor(private readonly options: ScenarioOptions) {}

  onTestRunEnd(modules: readonly TestModule[]): void {
    const { list } = this.options;
    const wanted = readFileSync(list, 'utf8')
      .split(/\r?\n/)
      .filter((line) => line !== '' && !line.startsWith('#'));
    const ran = new Set(
      modules.flatMap((module) =>
        [...module.children.allTests()]
          .filter((test) => ['passed', 'failed'].includes(test.result().state))
          .map((test) => test.fullName),
      ),
    );
    if (onlySome(process.argv)) {
      process.stdout.write(`${ran.size} of ${wanted.length} listed scenarios were asked for and ran\n`);
      return;
    }
    const missing = wanted.filter((name) => !ran.has(name));
    const unlisted = [...ran].filter((name) => !wanted.includes(name));
    for (const name of missing) process.stdout.write(`did not run: ${name}\n`);
    for (const name of unlisted) process.stdout.write(`ran, but is not listed: ${name}\n`);
    process.stdout.write(`${ran.size} scenarios ran, ${wanted.length} are listed\n`);
    if (missing.length > 0 || unlisted.length > 0) process.exitCode = 1;
  }
}

/** Whether files or names of scenarios were given on the command line. */
const onlySome = (words: readonly string[]): boolean =>
  words.some((word) => word === '-t' || word.startsWith('--testNamePattern') || word.startsWith('tests/workbench/'));
