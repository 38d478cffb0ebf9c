import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { checkCodes, type Finding, render } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { examineText } from '../support/read.js';
import { at, type Example, examplesOf } from './page.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const pages = ['packages/engine/src/checks', 'packages/language/src/checks']
  .map((folder) => join(root, folder))
  .filter((folder) => existsSync(folder))
  .flatMap((folder) => readdirSync(folder).map((file) => join(folder, file)))
  .filter((file) => file.endsWith('.md'))
  // A fault of a check itself: no text is known that shows it.
  .filter((file) => basename(file) !== 'check-failed.md');

const told = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ code, severity, message }) => `${severity} ${code}: ${render(message, { units: 'mm' })}`);

/** The example shows the check. */
async function fails(code: string, text: string): Promise<void> {
  const { findings } = await examineText(text);
  expect(
    findings.map((finding) => finding.code),
    told(findings).join('\n'),
  ).toContain(code);
}

/** The example does not show the check, and has no error of any kind. */
async function passes(code: string, text: string): Promise<void> {
  const { findings } = await examineText(text);
  const wrong = findings.filter((finding) => finding.code === code || finding.severity === 'error');
  expect(told(wrong)).toEqual([]);
}

async function shows(code: string, example: Example): Promise<void> {
  if (example.kind === 'fails') await fails(code, example.text);
  if (example.kind === 'passes') await passes(code, example.text);
  if (!example.limit) return;
  await passes(code, at(example, example.limit.passes));
  await fails(code, at(example, example.limit.fails));
}

describe.each(pages.map((file) => [basename(file, '.md'), readFileSync(file, 'utf8')] as const))('%s', (code, page) => {
  const examples = examplesOf(page);

  it('shows what fails and what passes', () => {
    const kinds = examples.map(({ kind }) => kind);
    expect(kinds).toContain('fails');
    expect(kinds).toContain('passes');
  });

  it.each(examples.map((example) => [`${example.kind} (line ${example.line})`, example] as const))(
    '%s',
    async (_, example) => {
      await shows(code, example);
    },
  );

  const limits = examples.flatMap(({ limit }) => limit ?? []);
  it.each(limits)('changes its verdict within a thousandth of a millimetre: $passes, $fails', (limit) => {
    expect(Math.abs(Number(limit.passes) - Number(limit.fails))).toBeCloseTo(0.001, 9);
  });
});

it('every check of the engine has a page', () => {
  const found = pages.map((file) => basename(file, '.md'));
  expect(checkCodes.filter((code) => !found.includes(code))).toEqual([]);
});
