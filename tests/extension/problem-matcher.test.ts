import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { manifest, root } from './manifest.js';

const bin = join(root, 'packages/cli/bin/dryfit.js');
const run = (...words: string[]) =>
  spawnSync(process.execPath, [bin, 'check', ...words], { cwd: root, encoding: 'utf8', maxBuffer: 1 << 26 }).stdout;
const [head, place] = manifest.contributes.problemMatchers[0].pattern.map((pattern) => ({
  ...pattern,
  regexp: new RegExp(pattern.regexp),
}));

/** Reads output as an editor does: two lines one after the other that match the two patterns. */
function matched(output: string) {
  const lines = output.split(/\r?\n/);
  return lines.flatMap((line, at) => {
    const first = head?.regexp.exec(line);
    const second = place?.regexp.exec(lines[at + 1] ?? '');
    if (!first || !second) return [];
    return {
      severity: severityOf(first[head?.severity ?? 0]),
      code: first[head?.code ?? 0],
      message: first[head?.message ?? 0],
      file: second[place?.file ?? 0],
      line: Number(second[place?.line ?? 0]),
      column: Number(second[place?.column ?? 0]),
    };
  });
}

/** Editors take the word "note" for information. */
const severityOf = (word: string | undefined) => (word === 'note' ? 'info' : word);

test('finds every finding of the broken examples, as the JSON output has them', () => {
  const found = matched(run('examples/broken'));
  const { findings } = JSON.parse(run('examples/broken', '--format', 'json'));
  const wanted = findings.map(
    (finding: {
      severity: string;
      code: string;
      message: string;
      place: { file: string; line: number; column: number };
    }) => ({
      severity: finding.severity,
      code: finding.code,
      message: finding.message,
      file: finding.place.file,
      line: finding.place.line,
      column: finding.place.column,
    }),
  );
  expect(found.length).toBeGreaterThan(70);
  expect(found).toEqual(wanted);
  expect(new Set(found.map(({ severity }) => severity)).size).toBe(3);
});

test('finds nothing in what is said of sound files', () => {
  expect(matched(run('examples/periodicals.joinery'))).toEqual([]);
});
