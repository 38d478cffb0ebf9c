import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { onePage } from '../../packages/extension/src/example/one-page.js';
import { FilesInMemory } from '../../packages/language/src/testing/files.fixture.js';
import { extension, manifest } from './manifest.js';

const [{ steps }] = manifest.contributes.walkthroughs;
const commands = manifest.contributes.commands.map(({ command }) => command);
const text = (file: string) => readFileSync(join(extension, 'example', file), 'utf8').replaceAll('\r\n', '\n');
const cabinet = text('periodicals-rack.joinery');
const shop = text('workshop.joinery');

/** Codes of what is wrong with a cabinet beside its shop. */
async function codes(of: string): Promise<readonly string[]> {
  const files = new FilesInMemory({ 'rack.joinery': of, 'workshop.joinery': shop });
  return (await files.examine('rack.joinery')).findings.map(({ code }) => code);
}

test('the example fits, also as one text without files', async () => {
  expect(await codes(cabinet)).toEqual([]);
  const alone = onePage(cabinet, shop);
  expect(alone).not.toContain('import');
  expect((await new FilesInMemory({ 'alone.joinery': alone }).examine('alone.joinery')).findings).toEqual([]);
  expect((await new FilesInMemory({ 'workshop.joinery': shop }).examine('workshop.joinery')).findings).toEqual([]);
});

test('the change that the walkthrough asks for gives the finding it shows', async () => {
  const step = steps.find(({ id }) => id === 'break');
  const [, line = '', number = ''] = /``([^`]+)`` write \*\*(\d+)\*\*/.exec(step?.description ?? '') ?? [];
  expect(cabinet.split(line)).toHaveLength(2);
  const broken = cabinet.replace(line, line.replace(/\d+/, number));
  expect(await codes(broken)).toEqual(['spacer-not-in-stock']);
});

test.each(steps.map((step) => [step.id, step] as const))(
  '%s: its picture is there and its commands are ours',
  (_, step) => {
    const media = step.media.markdown ?? step.media.svg;
    expect(media && existsSync(join(extension, media))).toBe(true);
    const asked = [...step.description.matchAll(/\(command:([\w.]+)\)/g)].map(([, command]) => command);
    for (const command of asked) expect(commands).toContain(command);
    for (const event of step.completionEvents) {
      if (event.startsWith('onCommand:')) expect(commands).toContain(event.slice('onCommand:'.length));
      else expect(told).toContain(event);
    }
  },
);

/** What the status item tells the walkthrough. */
const told = [...readFileSync(join(extension, 'src/status/item.ts'), 'utf8').matchAll(/'(ha[sd]\w+)'/g)].map(
  ([, key]) => `onContext:dryfit.${key}`,
);

test('words of a text stand between two marks each, which the page shows as such', () => {
  for (const { description } of steps) expect(description.replaceAll(/``[^`]+``/g, '')).not.toContain('`');
});

test('the step that comes to milling speaks of hands, eyes, ears and dust', () => {
  const last = steps.at(-1)?.description ?? '';
  for (const word of ['hands', 'ear and eye', 'dust', 'scrap', 'clamp', 'manual']) expect(last).toContain(word);
});
