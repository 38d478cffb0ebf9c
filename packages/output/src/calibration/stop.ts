import { canStand, type LengthFormat, Rational } from '@dryfit/engine';
import { plural } from '../findings/text.js';
import { printText } from '../print/length.js';
import type { Paint } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { written } from './lines.js';
import { type CalibrationReport, isCertain, type StopReport } from './report.js';
import { measured } from './words.js';

/** Beyond this a figure is more likely a slip of the hand than of the stop, mm. Common practice, no source. */
const SLIP = Rational.of(2);

/** What was found of the stop, with the arithmetic, and what is to be done about it. */
export function stopLines(
  { stop, within, set: base }: CalibrationReport,
  format: LengthFormat,
  paint: Paint,
): string[] {
  if (!stop) return [];
  const told = (length: Rational) => measured(length, format);
  const { found, set, stands, walls, jig, place } = stop;
  const where = place === undefined ? '' : `, described in ${place}`;
  const lines = [paint.strong(visible(`stop of ${jig.name}${where}`))];
  if (stands) lines.push(`  from END to REFERENCE face ${told(stands)}, and ${told(set)} was set; the base drops out`);
  if (walls)
    lines.push(
      `  from END to the middle of the slot (${told(walls.nearer)} + ${told(walls.farther)}) / 2 = ${told(walls.nearer.add(walls.farther).div(Rational.TWO))}, less the base of ${told(base)}${stands ? ': it agrees' : ''}`,
    );
  const away = found.value.sign() < 0 ? 'too near to the end' : 'too far from the end';
  if (found.value.isZero()) lines.push(`  it stands where it was set, ± ${told(found.within)}`);
  else
    lines.push(
      `  it stands ${told(found.value.abs())} ${away}, ± ${told(found.within)} with figures that may be ${told(within)} off`,
    );
  return [...lines, ...whatToDo(stop, format)];
}

function whatToDo({ found, set, held, jig }: StopReport, format: LengthFormat): string[] {
  const told = (length: Rational) => measured(length, format);
  const { value } = found;
  if (!isCertain(found, Rational.ZERO))
    return value.isZero() ? [] : ['  and that is no more than measuring may be off: leave it as it is'];
  if (held && value.abs().le(held)) return [`  the shop lets a stop be ${told(held)} off, so it may stay as it is`];
  const instead = set.sub(value);
  const lines = [
    `  put its scale right by ${told(value.abs())}, so that it shows ${told(set.add(value))} where it now shows ${told(set)}${canStand(jig, instead) ? `; or set ${told(instead)} where ${told(set)} is wanted` : ''}`,
    '  then mill the test again near the other end of its travel: if it is off there by another figure, the scale is wrong and not its place',
  ];
  if (value.abs().gt(SLIP))
    lines.push('  that is a lot: see that the END went against the stop, and that REFERENCE looks to the END');
  return lines;
}

/** What a stop may be off as the shop should have it, if it is left as it stands; undefined where nothing is to be written. */
export function stopLine({ stop, plainIsMm }: CalibrationReport): string | undefined {
  if (!stop || !isCertain(stop.found, Rational.ZERO)) return undefined;
  const most = stop.found.value.abs().add(stop.found.within);
  if (stop.held && stop.found.value.abs().le(stop.held)) return undefined;
  return `stop ± ${written(most, plainIsMm)}`;
}

/** What the stop as it stands does to the cabinets: which slots lie elsewhere, and what comes askew. */
export function stopMoveLines({ stop }: CalibrationReport, format: LengthFormat, paint: Paint): string[] {
  if (!stop || stop.moved.length === 0) return [];
  const told = (length: Rational) => measured(length, format);
  const by = told(stop.found.value.abs());
  const away = stop.found.value.sign() < 0 ? 'nearer to' : 'further from';
  const lines = [paint.strong('what was milled against it as it stands')];
  for (const { label, moves } of stop.moved) {
    const name = visible(printText(label, format));
    const count = moves.halves.length;
    if (count === 0) {
      lines.push(`  ${name}: nothing`);
      continue;
    }
    lines.push(`  ${name}: ${plural(count, 'group')} of slots ${count === 1 ? 'lies' : 'lie'} ${by} ${away} the end`);
    for (const { joint, half, really } of moves.halves)
      lines.push(
        visible(
          `    ${half.part}, for ${joint.id}: ${told(really)} from its ${half.from.side}, not ${told(half.across)}`,
        ),
      );
    if (moves.askew.length === 0) lines.push('    what stands on them is moved with them, at all of its joints alike');
    for (const { part, by: askew } of moves.askew)
      lines.push(visible(`    ${part} stands ${told(askew)} askew: one of its joints is moved otherwise than another`));
  }
  return lines;
}
