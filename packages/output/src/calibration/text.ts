import { type LengthFormat, Rational, stepOf } from '@dryfit/engine';
import { plural } from '../findings/text.js';
import { printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { baseLine, kerfLine, plungeLine } from './lines.js';
import { type CalibrationReport, canBeSet, isCertain } from './report.js';
import { stopLine, stopLines, stopMoveLines } from './stop.js';
import { measured } from './words.js';

/** What a test joint tells of a machine, with the arithmetic, and what to write or to set. */
export function calibrationText(report: CalibrationReport, format: LengthFormat, paint: Paint = PLAIN): string {
  const { machine, place } = report;
  const title = `${machine.name}${place === undefined ? '' : `, described in ${place}`}`;
  const parts = [
    [paint.strong(visible(title))],
    baseLines(report, format, paint),
    depthLines(report, format, paint),
    stopLines(report, format, paint),
    writeLines(report, paint),
    moveLines(report, format, paint),
    stopMoveLines(report, format, paint),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

/** Beyond this a figure is more likely a slip of the hand than of the machine, mm. Common practice, no source. */
const SLIP = Rational.ONE;

function baseLines(report: CalibrationReport, format: LengthFormat, paint: Paint): string[] {
  const { base, set, within, machine } = report;
  if (!base) return [];
  const told = (length: Rational) => measured(length, format);
  const { value } = base.found;
  const lines = [paint.strong('base to centre')];
  if (base.from === 'joint') {
    const { thickness, step } = base.joint;
    const way = step.sign() < 0 ? `− ${told(step.neg())} (PLAIN proud)` : `+ ${told(step)} (REFERENCE proud)`;
    lines.push(
      `  (${told(thickness)} thick ${way}) / 2 = ${told(value)}, ± ${told(base.found.within)} with figures that may be ${told(within)} off`,
      `  nothing off would have shown ${proud(stepOf(set, thickness), format)}`,
    );
  } else {
    const { nearer, farther } = base.walls;
    lines.push(
      `  (${told(nearer)} + ${told(farther)}) / 2 = ${told(value)}, ± ${told(base.found.within)} with figures that may be ${told(within)} off`,
      `  width of the slot: ${told(farther)} − ${told(nearer)} = ${told(base.kerf.value)}, ± ${told(base.kerf.within)}; ${told(machine.kerf)} is written`,
    );
  }
  const off = value.sub(set);
  const than = `${told(off.abs())} ${off.sign() < 0 ? 'less' : 'more'} than the ${told(set)} that ${canBeSet(machine) ? 'was set' : 'is written'}`;
  if (off.isZero()) lines.push(`  just the ${told(set)} that ${canBeSet(machine) ? 'was set' : 'is written'}`);
  else if (!isCertain(base.found, set))
    lines.push(`  ${than}, and no more than measuring may be off: leave it as it is`);
  else lines.push(`  ${than}`);
  if (canBeSet(machine) && isCertain(base.found, set))
    lines.push(
      `  set ${told(set.sub(off))} where ${told(set)} is wanted, or put the scale right; nothing is to be written`,
    );
  if (off.abs().gt(SLIP)) lines.push(...slipLines(report, format));
  return lines;
}

/** What a large error may be instead. */
function slipLines({ base, set }: CalibrationReport, format: LengthFormat): string[] {
  const lines = ['  that is a lot: see that one piece was turned over, and that the slots are of this machine'];
  if (base?.from !== 'joint') return lines;
  const other = base.joint.thickness.sub(base.joint.step).div(Rational.TWO);
  if (other.sub(set).abs().lt(base.found.value.sub(set).abs()))
    lines.push(`  had the other face stood proud, it would be ${measured(other, format)}`);
  return lines;
}

/** "REFERENCE proud by 1.3". */
export function proud(step: Rational, format: LengthFormat): string {
  if (step.isZero()) return 'both faces flush';
  return `${step.sign() > 0 ? 'REFERENCE' : 'PLAIN'} proud by ${measured(step.abs(), format)}`;
}

function depthLines({ depth, within }: CalibrationReport, format: LengthFormat, paint: Paint): string[] {
  if (!depth) return [];
  const told = (length: Rational) => measured(length, format);
  const { connector, found } = depth;
  const lines = [paint.strong(`depth for ${connector.name}`)];
  if (depth.from === 'gap' && !found) {
    lines.push(
      `  it closes, so each slot is at least ${told(depth.across)} / 2 = ${told(depth.across.div(Rational.TWO))} deep`,
      '  how much deeper no joint tells: measure the depth of a slot, and give it with --depth',
    );
    return lines;
  }
  if (!found) return lines;
  const wanted = connector.plunge.edge;
  if (depth.from === 'gap')
    lines.push(
      `  the connector stands on the bottom of both slots: (${told(depth.across)} − ${told(depth.gap)}) / 2 = ${told(wanted.add(found.off.value))} deep each, ± ${told(found.off.within)} with figures that may be ${told(within)} off`,
    );
  else lines.push(`  ${told(depth.depth)} deep, ± ${told(found.off.within)}`);
  const by = found.off.value;
  if (!isCertain(found.off, Rational.ZERO))
    lines.push(
      `  ${told(wanted)} is written, and the difference is no more than measuring may be off: leave it as it is`,
    );
  else
    lines.push(
      `  ${told(by.abs())} ${by.sign() < 0 ? 'shallower' : 'deeper'} than the ${told(wanted)} that is written: set the machine ${told(by.abs())} ${by.sign() < 0 ? 'deeper' : 'shallower'}, and measure again`,
    );
  lines.push(
    found.short.sign() > 0
      ? `  as it is, joints stay ${told(found.short)} open: do not mill from these figures`
      : `  as it is, joints close with ${told(found.short.neg())} to spare`,
  );
  return lines;
}

/** What the shop file should say. */
function writeLines(report: CalibrationReport, paint: Paint): string[] {
  const { machine, place, isOwn, depth } = report;
  const figures = [baseLine(report), kerfLine(report)].filter((line) => line !== undefined);
  const plunge = plungeLine(report);
  const stop = stopLine(report);
  if (figures.length === 0 && plunge === undefined && stop === undefined) return [];
  const lines = [paint.strong('to be written; nothing is changed by itself')];
  const at = place === undefined ? '' : `, ${place}`;
  if (figures.length > 0) {
    const where = isOwn
      ? `  in machine ${machine.name}${at}:`
      : `  the library has this machine; describe it in your shop, machine ${machine.name} { … }, with:`;
    lines.push(visible(where), ...figures.map((line) => `    ${line}`));
  }
  if (plunge !== undefined && depth)
    lines.push(
      visible(`  in connector ${depth.connector.name}, only where the machine cannot be set otherwise:`),
      `    ${plunge}`,
    );
  if (stop !== undefined) lines.push('  in tolerances, only where the stop is left as it stands:', `    ${stop}`);
  return lines;
}

function moveLines({ cabinets, machine }: CalibrationReport, format: LengthFormat, paint: Paint): string[] {
  if (cabinets.length === 0) return [];
  const lines = [paint.strong('what that moves in the tables')];
  for (const { label, moves } of cabinets) {
    const name = visible(printText(label, format));
    const [first] = moves.halves;
    if (!first) {
      lines.push(`  ${name}: nothing is milled by ${machine.name} with its base as written`);
      continue;
    }
    const by = first.to.sub(first.half.across);
    const away = by.sign() < 0 ? 'nearer to' : 'further from';
    lines.push(
      `  ${name}: ${plural(moves.halves.length, 'group')} of slots ${moves.halves.length === 1 ? 'lies' : 'lie'} ${measured(by.abs(), format)} ${away} what they are measured from`,
    );
    lines.push('    both halves of every joint move together: what was milled fits what will be milled');
    for (const [list, words] of [
      [moves.found, 'is found then'],
      [moves.cured, 'is found no longer'],
    ] as const) {
      const codes = [...new Set(list.map(({ code }) => code))];
      if (codes.length > 0) lines.push(`    ${codes.join(', ')} ${words}`);
    }
  }
  return lines;
}
