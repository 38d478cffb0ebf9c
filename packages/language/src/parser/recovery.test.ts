import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { deletionsOf, findingsOf } from './deletions.fixture.js';

const examples = new URL('../../../../examples/', import.meta.url);
const broken = new URL('broken/', examples);

const files = [examples, broken].flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.joinery'))
    .map((file) => ({ folder, file })),
);

describe.each(files)('$file', ({ folder, file }) => {
  test('of all one-token deletions at least 95 % leave every finding that does not depend on the token', async () => {
    const text = readFileSync(new URL(file, folder), 'utf8');
    const whole = await findingsOf(text, folder);
    const deletions = await deletionsOf(text, folder);
    const kept = new Map<string, ReadonlySet<string>>();
    const lost: string[] = [];
    for (const { token, line, text: damaged, withoutStatement } of deletions) {
      let without = kept.get(withoutStatement);
      if (without === undefined) {
        without = await findingsOf(withoutStatement, folder);
        kept.set(withoutStatement, without);
      }
      const found = await findingsOf(damaged, folder);
      const missing = [...whole].filter((finding) => without.has(finding) && !found.has(finding));
      if (missing.length > 0) lost.push(`line ${line}, ${token}: ${missing.join('; ')}`);
    }
    expect(deletions.length).toBeGreaterThan(15);
    expect(lost.length / deletions.length, lost.join('\n')).toBeLessThanOrEqual(0.05);
  }, 600_000);
});
