import { type ChangeOver, inTurn, type LengthFormat, Rational, type Setting, type SetUp } from '@dryfit/engine';
import { MILLING_CAUTIONS } from '../cautions.js';
import type { PlannedJob } from '../plan/tables.js';
import { minutes, patternWords, slotsWord } from '../plan/words.js';
import { printText } from '../print/length.js';
import { figure } from './cards.js';
import { fitted, wrapped } from './metrics.js';
import { MARGIN, type Pen } from './page.js';

/** What stands under the cards takes so much, mm. */
export const FOOTER = 27.6;

/** What comes next, how long this takes, and what keeps hands whole. */
export function footer(
  pen: Pen,
  job: PlannedJob,
  index: number,
  more: boolean,
  top: number,
  [width, height]: readonly [number, number],
  format: LengthFormat,
): void {
  const next = job.plan.setUps[index + 1];
  const inside = width - 2 * MARGIN;
  const words = more
    ? 'Then: the next sheet of this set-up'
    : next
      ? `Then set-up ${index + 2}: ${nextWords(job.plan.setUps[index], next, format)}; all else stays`
      : 'Then: nothing; this is the last set-up of the job';
  pen.box(MARGIN, top + 2, inside, 9.8, 0.9);
  const size = 5.4;
  if (fitted(words, inside - 6, size, true) === size) pen.text(MARGIN + 3, top + 8.8, words, size, { bold: true });
  else {
    const lines = wrapped(words, inside - 6, 3.9, true);
    const fit = lines.length > 2 ? [words] : lines;
    for (const [i, line] of fit.entries())
      pen.text(MARGIN + 3, top + 6.2 + i * 4.3, line, fitted(line, inside - 6, 3.9, true), { bold: true });
  }
  const own = job.plan.setUps[index];
  const time = own
    ? `All of this set-up: ${own.slots} ${slotsWord(own)}, reckoned with ${minutes(own.change)} min to change and ${minutes(own.mill)} min to mill.`
    : '';
  pen.text(MARGIN, top + 15.4, time, 3);
  const cautions = ['Clean fence, bed and reference surfaces before each piece.', ...MILLING_CAUTIONS].join(' ');
  for (const [i, line] of wrapped(cautions, inside, 3.1).entries()) {
    if (top + 19.2 + i * 3.7 < height - 6) pen.text(MARGIN, top + 19.2 + i * 3.7, line, 3.1);
  }
}

/** What is set anew for the next set-up; and what its pieces take that no setting tells: spacers at the other fence, blocks. */
function nextWords(own: SetUp | undefined, next: SetUp, format: LengthFormat): string {
  const anew = next.changed.length > 0 ? [changes(next.changed, next.setting, format)] : [];
  const spacer = own === undefined || next.changed.includes('spacer') ? '' : spacerMoves(own, next);
  const blocks = next.operations.flatMap(({ half: { stop } }) => (stop?.block ? figure(stop.block.width, format) : []));
  return (
    [
      ...anew,
      ...(spacer === '' ? [] : [spacer]),
      ...(blocks.length > 0 ? [`block ${[...new Set(blocks)].join(' or ')} at the stop`] : []),
    ].join(', ') || 'nothing changes'
  );
}

/** Where a spacer that stays as it is has to go; nothing where it stands there already, or none stands anywhere. */
function spacerMoves(own: SetUp, next: SetUp): string {
  const { kind } = next.setting.spacer;
  if ((kind !== 'stock' && kind !== 'cut') || atBoth(own)) return '';
  if (atBoth(next)) return 'a spacer at each fence';
  const [last, first] = [inTurn(own).at(-1)?.half.hand, inTurn(next)[0]?.half.hand];
  return first === undefined || last === first ? '' : `spacer to the ${first} fence`;
}

/** Blocks are made for both fences where pieces lie at both at once. */
const atBoth = ({ spacers, beside }: SetUp): boolean => (spacers ? spacers.fences === 'both' : beside.length > 0);

/** "spacer to 22, stop to none": what is set anew, and to what. */
export function changes(list: readonly ChangeOver[], setting: Setting, format: LengthFormat): string {
  return list.map((one) => TO[one](setting, format)).join(', ') || 'nothing changes';
}

const TO: Readonly<Record<ChangeOver, (setting: Setting, format: LengthFormat) => string>> = {
  machine: ({ machine }) => `take the ${machine}`,
  depth: ({ connector, depth }, format) => `depth to ${figure(depth, format)} for ${connector}`,
  base: ({ base }, format) => `base to centre ${figure(base, format)}`,
  pose: ({ pose }) => `pieces held for ${pose.surface === 'mitre' ? 'mitred ends' : `${pose.surface}s`}`,
  pattern: (setting, format) => `lines of ${printText(patternWords(setting), format)}`,
  spacer: ({ spacer }, format) => {
    if (spacer.kind === 'stock') return `spacer to ${figure(Rational.sum(spacer.stack), format)}`;
    if (spacer.kind === 'cut') return `spacer to ${figure(spacer.width, format)}`;
    return spacer.kind === 'none' ? 'spacer out' : 'mark out';
  },
  stop: ({ stop }, format) => (stop ? `stop to ${figure(stop, format)}` : 'stop away'),
};
