import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Finding, formatMm, Rational } from '@dryfit/engine';
import { describe, expect, it } from 'vitest';
import { examineText } from '../support/read.js';
import { examplesOf } from './page.js';

const folder = fileURLToPath(new URL('../../packages/engine/src/checks/', import.meta.url));
const failing = readdirSync(folder)
  .filter((file) => file.endsWith('.md'))
  .flatMap((file) =>
    examplesOf(readFileSync(join(folder, file), 'utf8'))
      .filter(({ kind }) => kind === 'fails')
      .map(({ line, text }) => ({ code: file.slice(0, -'.md'.length), line, text })),
  );

/** The text with the number that a finding's data gives, in the finding's first related place. */
function changed(text: string, { data, related }: Finding): string | undefined {
  const to = data?.to;
  const place = related[0]?.source;
  if (typeof to !== 'string' || !place) return undefined;
  const [numerator = '', denominator = '1'] = to.split('/');
  const value = Rational.of(BigInt(numerator), BigInt(denominator));
  return `${text.slice(0, place.start)}${formatMm(value, { decimals: 9 }).text}${text.slice(place.end)}`;
}

const worthTrying = await Promise.all(
  failing.map(async ({ code, line, text }) => {
    const { findings } = await examineText(text);
    const cures = findings.filter((finding) => finding.code === code).map((finding) => changed(text, finding));
    return { code, line, text, cures: cures.filter((cure) => cure !== undefined) };
  }),
);

describe('a number that a finding says to write instead', () => {
  const tried = worthTrying.filter(({ cures }) => cures.length > 0);

  it.each(tried)('cures $code (line $line of its page)', async ({ code, text, cures }) => {
    const count = async (of: string) =>
      (await examineText(of)).findings.filter((finding) => finding.code === code).length;
    for (const cure of cures) expect(await count(cure), cure).toBeLessThan(await count(text));
  });

  it('is given by these checks', () => {
    expect([...new Set(tried.map(({ code }) => code))]).toEqual(
      expect.arrayContaining(['does-not-close', 'spacer-not-in-stock', 'stop-not-on-step']),
    );
  });
});
