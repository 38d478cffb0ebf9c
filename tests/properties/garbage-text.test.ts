import { AXES, SIDES } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plans } from '../support/cabinets/arbitrary.js';
import { write } from '../support/cabinets/plan.js';
import { examples } from '../support/examples.js';
import { examineText } from '../support/read.js';
import { tokensOf, withTokens } from '../support/tokens.js';

/** What may take the place of a token, besides other tokens of the same text. */
const ODD = [
  '',
  '0',
  '-1',
  '1/0',
  '23-1/4"',
  '99999999999999999999999',
  '1e9',
  '{',
  '}',
  '(',
  ')',
  ',',
  '.',
  '"',
  "'",
  '±',
  '🪵',
  '\0',
  'left',
  'shelf 99',
  'cabinet',
  '/*',
  '//',
  'undefined',
  '__proto__',
  'constructor',
];

/** Looks at everything that is worked out, so that what is put off until asked for cannot throw either. */
async function lookAtAll(text: string): Promise<void> {
  const { results, findings } = await examineText(text);
  for (const finding of findings) {
    expect(finding.message.length).toBeGreaterThan(0);
    expect(finding.source.start).toBeGreaterThanOrEqual(0);
    expect(finding.source.end).toBeLessThanOrEqual(text.length);
    expect(finding.source.end).toBeGreaterThanOrEqual(finding.source.start);
  }
  for (const result of results) {
    for (const part of result.fit.parts) {
      for (const axis of AXES) result.reasons(part.id, axis);
      for (const side of SIDES) result.place(part.id, side);
    }
  }
}

const changes = fc.array(fc.record({ at: fc.nat(), put: fc.oneof(fc.constantFrom(...ODD), fc.nat()) }), {
  minLength: 1,
  maxLength: 6,
});

function spoiled(text: string, made: readonly { readonly at: number; readonly put: string | number }[]): string {
  const tokens = tokensOf(text);
  const token = (i: number): string => tokens[i % tokens.length]?.text ?? '';
  return withTokens(
    text,
    new Map(made.map(({ at, put }) => [at % tokens.length, typeof put === 'string' ? put : token(put)])),
  );
}

describe('a text that makes no sense gives findings and never throws', () => {
  test.each(examples().map(({ name, text }) => [name, text]))('%s with tokens changed', async (_, text) => {
    await fc.assert(
      fc.asyncProperty(changes, (made) => lookAtAll(spoiled(text, made))),
      { numRuns: 60 },
    );
  });

  test('random cabinets with tokens changed', async () => {
    await fc.assert(
      fc.asyncProperty(plans, changes, (plan, made) => lookAtAll(spoiled(write(plan), made))),
      { numRuns: 100 },
    );
  });

  test('a text cut off anywhere', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...examples()), fc.nat(), ({ text }, at) =>
        lookAtAll(text.slice(0, at % text.length)),
      ),
      { numRuns: 60 },
    );
  });

  test('any characters at all', async () => {
    await fc.assert(fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 200 }), lookAtAll), { numRuns: 100 });
  });
});
