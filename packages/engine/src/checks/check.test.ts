import { describe, expect, it } from 'vitest';
import { render } from '../fit/text.js';
import { CHECK_FAILED, type Check, type CheckContext, runChecks } from './check.js';

const place = { uri: 'file:///a.joinery', start: 3, end: 9 };
const context = { spec: { nameSource: place } } as CheckContext;
const found = { message: ['found'], cure: ['mend'], source: place, related: [], about: {} };

describe('running the checks', () => {
  it('puts name and severity on what is found, and hears the others when one fails', () => {
    const checks: Check[] = [
      { code: 'first', severity: 'error', run: () => [found, { ...found, severity: 'info' }] },
      {
        code: 'second',
        severity: 'warning',
        *run() {
          yield found;
          throw new Error('out of its depth');
        },
      },
      { code: 'third', severity: 'warning', run: () => [found] },
    ];
    const findings = runChecks(checks, context);
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'error first',
      'info first',
      'warning second',
      `error ${CHECK_FAILED}`,
      'warning third',
    ]);
    const failure = findings.find(({ code }) => code === CHECK_FAILED);
    expect(failure && render(failure.message, { units: 'mm' })).toContain('second could not be run to its end');
    expect(failure?.source).toBe(place);
  });
});
