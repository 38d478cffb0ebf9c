import type { PlanRows } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import type { Standing } from '../../panel/messages.js';
import { compareFromNow, START, timeWords, withPlan } from './state.js';

const standing: Standing = {
  name: 'rack.joinery',
  uri: 'file:///rack.joinery',
  file: 'there',
  served: true,
  last: true,
  broken: false,
  stale: false,
  workedOut: true,
};
const plan = (change: string, warning?: string): PlanRows => ({
  job: 'Library',
  places: [],
  warning,
  change,
  mill: '20',
  atLeast: change,
  proven: true,
  notes: [],
  cautions: [],
  setUps: [],
  more: [],
});

test('later plans are compared with the first one, until the reader takes another', () => {
  const first = withPlan(START, standing, plan('10'), 1000);
  expect(first).toMatchObject({ uri: standing.uri, job: 'Library', bases: { Library: { at: 1000, change: '10' } } });
  const later = withPlan(first, standing, plan('12'), 2000);
  expect(later.bases).toEqual(first.bases);
  expect(compareFromNow(later, plan('12'), 3000).bases).toMatchObject({ Library: { at: 3000, change: '12' } });
});

test('a plan of a broken text, or of one with errors, is nothing to compare with', () => {
  expect(withPlan(START, { ...standing, broken: true }, plan('10'), 1).bases).toEqual({});
  expect(withPlan(START, { ...standing, broken: true, stale: true }, plan('10'), 1).bases).toEqual({});
  expect(withPlan(START, standing, plan('10', '1 error was found'), 1).bases).toEqual({});
});

test('a file without a job keeps what its job was compared with', () => {
  const first = withPlan(START, standing, plan('10'), 1000);
  expect(withPlan(first, standing, undefined, 2000)).toEqual(first);
});

test('the time is told, and the day if it was another one', () => {
  const at = new Date(2026, 10, 25, 18, 5).getTime();
  expect(timeWords(at, new Date(2026, 10, 25, 23, 0).getTime())).toBe('18:05');
  expect(timeWords(at, new Date(2026, 10, 26, 1, 0).getTime())).toBe('18:05 on 25 November');
});
