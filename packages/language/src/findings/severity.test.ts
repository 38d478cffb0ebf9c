import { checkSeverities, type Finding, type Severity, say } from '@dryfit/engine';
import { describe, expect, test } from 'vitest';
import { languageChecks } from '../checks/index.js';
import { checkNames, troublesOf, type WantedSeverity, withSeverities } from './severity.js';

const finding = (code: string, severity: Severity): Finding => ({
  code,
  severity,
  message: say`something`,
  cure: say`Do something.`,
  source: { uri: '', start: 0, end: 0 },
  related: [],
  about: {},
});
const after = (code: string, severity: Severity, wanted: WantedSeverity) =>
  withSeverities([finding(code, severity)], { [code]: wanted }).map((one) => one.severity);

describe('severity of a check', () => {
  test.each<[Severity, WantedSeverity, Severity[]]>([
    ['error', 'warning', ['warning']],
    ['error', 'info', ['info']],
    ['error', 'off', ['error']],
    ['warning', 'error', ['error']],
    ['warning', 'off', []],
    ['info', 'off', []],
  ])('%s, wanted %s', (severity, wanted, left) => {
    expect(after('slot-near-edge', severity, wanted)).toEqual(left);
  });

  test('of others is not touched, nor of a text that cannot be read', () => {
    expect(withSeverities([finding('handed', 'info')], { 'thin-wall': 'error' })).toEqual([finding('handed', 'info')]);
    expect(after('syntax', 'error', 'info')).toEqual(['error']);
    expect(withSeverities([finding('toString', 'info')], { handed: 'off' })).toHaveLength(1);
  });

  test('what cannot be followed is told with what can', () => {
    const told = troublesOf({ 'slot-near-egde': 'info', 'thin-wall': 'off', syntax: 'info', handed: 'off' });
    expect(told).toEqual([
      'there is no check called slot-near-egde; did you mean slot-near-edge?',
      'thin-wall finds what cannot be made and is not turned off; make it a warning or info, or write allow thin-wall "why" where it is meant',
      'syntax stays an error: where it is found, other findings are missing',
    ]);
  });

  test('every check can be named, and nothing else', () => {
    const own = [...checkSeverities.keys(), ...languageChecks.map(({ code }) => code)];
    expect(checkNames).toEqual([...new Set([...own, 'allow-unused', 'check-failed'])].sort());
  });
});
