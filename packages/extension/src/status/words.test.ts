import type { FitState } from '@dryfit/language/protocol';
import { expect, test } from 'vitest';
import { statusWords } from './words.js';

const state = (change: Partial<FitState>): FitState => ({
  uri: 'file:///rack.joinery',
  state: 'fits',
  errors: 0,
  warnings: 0,
  units: 'mm',
  cabinets: ['Rack'],
  jobs: [],
  ...change,
});
const worked = { joinery: true, thickness: 'measured' } as const;

test.each([
  [state({}), '$(check) Rack fits', 'information'],
  [state({ cabinets: ['Rack', 'Bin'] }), '$(check) 2 cabinets fit', 'information'],
  [state({ cabinets: [] }), '$(check) Nothing is wrong', 'information'],
  [state({ state: 'findings', errors: 1 }), '$(error) 1 error', 'error'],
  [state({ state: 'findings', errors: 2, warnings: 1 }), '$(error) 2 errors, 1 warning', 'error'],
  [state({ state: 'findings', warnings: 3 }), '$(warning) 3 warnings', 'warning'],
  [state({ state: 'findings' }), '$(info) notes only', 'information'],
  [state({ state: 'broken', errors: 1 }), '$(error) Text cannot be read', 'error'],
  [undefined, '$(watch) Not worked out yet', 'information'],
])('%#: says how a file stands', (told, text, severity) => {
  expect(statusWords(told, worked)).toMatchObject({ text, severity });
});

test('tells units and which thickness the sizes are worked from', () => {
  expect(statusWords(state({ units: 'in' }), { ...worked, thickness: 'nominal' }).detail).toBe(
    'inches, nominal thickness',
  );
});

test('does not say that a cabinet fits when none was worked out', () => {
  const { text, severity } = statusWords(state({}), { ...worked, joinery: false });
  expect(text).not.toMatch(/fits/);
  expect(severity).toBe('warning');
});
