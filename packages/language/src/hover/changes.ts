import type { Changes } from '@dryfit/engine';
import { paragraphs, table } from './markdown.js';

/** How each time is called. */
const WORDS = {
  machine: 'another machine',
  depth: 'another depth',
  base: 'another distance from base to centre',
  pose: 'held another way',
  pattern: 'other lines',
  spacer: 'another spacer',
  stop: 'the stop elsewhere',
  load: 'a piece laid down and taken off',
  slot: 'one slot',
} as const;

/** What changes take at this bench, and which of the times are the language's own. */
export function changesHover(changes: Changes): string {
  const rows = Object.entries(WORDS).map(([name, words]) => {
    const minutes = Number(changes[name as keyof typeof WORDS].toNumber().toFixed(2));
    return [words, `${minutes} min${changes.written.includes(name) ? '' : ', as the language has it'}`];
  });
  return paragraphs('**changes**: what it takes to set things anew, and to mill', table(['', 'takes'], rows));
}
