import { expect, test } from 'vitest';
import { sheetsTask, taskFor, titleOf, wordsOf } from './definition.js';

test('a task becomes the words of the command line', () => {
  expect(wordsOf({ type: 'dryfit', command: 'check' })).toEqual(['check']);
  expect(wordsOf({ type: 'dryfit', command: 'check', file: 'racks', args: ['--strict'] })).toEqual([
    'check',
    'racks',
    '--strict',
  ]);
  expect(wordsOf(sheetsTask('rack.joinery', 'Library'))).toEqual([
    'sheets',
    'rack.joinery',
    'Library',
    '--out',
    'tables',
  ]);
  expect(wordsOf(sheetsTask('rack.joinery', 'Library', 3))).toEqual([
    'sheets',
    'rack.joinery',
    'Library',
    '--out',
    'tables',
    '--set-up',
    '3',
  ]);
  expect(wordsOf(taskFor('build', 'rack.joinery'))).toEqual(['build', 'rack.joinery', '--out', 'tables']);
});

test('a name that begins with a dash is no option', () => {
  expect(wordsOf(taskFor('draw', '--out.joinery'))).toEqual(['draw', './--out.joinery', '--out', 'drawings']);
});

test('what is missing is said', () => {
  expect(wordsOf({ type: 'dryfit', command: 'build' })).toEqual({ missing: '"build" needs a "file"' });
  expect(wordsOf({ type: 'dryfit', command: 'burn' as 'build', file: 'x' })).toHaveProperty('missing');
});

test('titles tell what is run on what', () => {
  expect(titleOf({ type: 'dryfit', command: 'check' })).toBe('check all');
  expect(titleOf(taskFor('build', 'rack.joinery'))).toBe('build rack.joinery');
});
