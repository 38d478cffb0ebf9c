import { type Connector, type Jig, type LengthFormat, type Machine, Rational, stepOf } from '@dryfit/engine';
import { MILLING_CAUTIONS } from '../cautions.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { canBeSet } from './report.js';
import { proud } from './text.js';
import { measured } from './words.js';

/** What the test joint of a machine is asked for. */
export interface HowTo {
  readonly file: string;
  readonly machine: Machine;
  /** Connectors that it cuts for. */
  readonly connectors: readonly Connector[];
  /** Thickness of the pieces, where it is told already, mm. */
  readonly scrap: Rational | undefined;
  /** Least wood beside a slot, mm. */
  readonly wall: Rational;
  /** The jig whose stop is tested; absent where the shop has none. */
  readonly jig?: Jig | undefined;
}

/** How to mill a test joint and what to measure on it, step by step. */
export function calibrationHowTo(howTo: HowTo, format: LengthFormat, paint: Paint = PLAIN): string {
  const { machine, connectors, file, scrap, wall, jig } = howTo;
  const told = (length: Rational) => measured(length, format);
  const { least, most } = machine.base;
  const base = canBeSet(machine) ? `${told(least)} to ${told(most)}` : told(least);
  const set = canBeSet(machine) ? ' --set BASE' : '';
  const command = visible(`dryfit calibrate ${file} ${machine.name}`);
  const [connector] = connectors;
  const thick = least.add(machine.kerf.div(Rational.TWO)).add(wall);
  const lines = [
    paint.strong(visible(`A test joint for ${machine.name} (base to centre ${base})`)),
    '',
    `1. Take two pieces of scrap from one sheet, flat, at least ${told(thick)} thick, as wide as you can hold safely. Measure the thickness with calipers, where the joint comes: THICK.`,
    '2. Write REFERENCE on one face of each, PLAIN on the other.',
    `3. Mill one slot into one edge of each, the base of the machine on the REFERENCE face${canBeSet(machine) ? ', both with one setting of the base: BASE' : ''}.`,
    '4. Put them together edge to edge with the connector in, dry, and ONE PIECE TURNED OVER: REFERENCE of the one beside PLAIN of the other.',
    '   With both REFERENCE faces on one side an error of the base drops out, and the joint tells nothing of it. Turned over it shows twice.',
    '5. Lay a straight edge across the joint. Measure by how much the one face stands proud of the other: STEP. Say which face it is:',
    `     ${command}${set} --scrap THICK --reference-proud STEP`,
    `     ${command}${set} --scrap THICK --plain-proud STEP`,
    '   Base to centre = (THICK + STEP) / 2 with REFERENCE proud, (THICK − STEP) / 2 with PLAIN proud.',
  ];
  if (scrap && !canBeSet(machine))
    lines.push(`   ${told(scrap)} thick, with nothing off: ${proud(stepOf(least, scrap), format)}.`);
  lines.push(
    '   Or measure one slot, from the REFERENCE face to its nearer and its farther wall:',
    `     ${command}${set} --nearer NEAR --farther FAR`,
  );
  if (connector) {
    const name = connectors.length > 1 ? ` --connector ${connector.name}` : '';
    lines.push(
      '6. Depth: press the same joint home, dry. If it stays open, the connector stands on the bottom: measure the GAP.',
      `     ${command}${visible(name)} --gap GAP`,
      '   If it closes, measure how DEEP a slot is, in its middle:',
      `     ${command}${visible(name)} --depth DEEP`,
    );
  }
  if (jig?.stop) lines.push(...stopSteps(howTo, jig, connector ? 7 : 6, command, format));
  const shared =
    connectors.length > 1 ? visible(` This machine cuts for ${connectors.map(({ name }) => name).join(', ')}.`) : '';
  lines.push('', `Figures are taken to be within 0.05 mm of the truth, unless --within says otherwise.${shared}`, '');
  lines.push(paint.strong('Cautions'), ...MILLING_CAUTIONS.map((caution) => `  ${caution}`));
  return `${lines.join('\n')}\n`;
}

/** Calipers reach so far, mm, so that a stop is best tried there. Common practice, no source. */
const REACHED = Rational.of(100);

/** A joint that stands: what is measured from its end is the stop and not the base. */
function stopSteps(
  { machine }: HowTo,
  { name, stop }: Jig,
  step: number,
  command: string,
  format: LengthFormat,
): string[] {
  if (!stop) return [];
  const at = Rational.max(stop.least, Rational.min(stop.most, REACHED));
  const set = canBeSet(machine) ? ' --set BASE' : '';
  const base = canBeSet(machine) ? ', with the same BASE' : '';
  return [
    visible(
      `${step}. Stop of ${name}: lay a third piece, longer than that, with its end against the stop; set it to STOP, ${measured(at, format)} say. Write END on that end.`,
    ),
    `   Mill one slot into its face${base}, as a side is milled, and stand one of the two pieces on it by its slotted edge, the connector in, dry: REFERENCE looks to the END.`,
    '   So the base drops out. Press the standing piece toward the END, then away from it; measure from END to REFERENCE both times, and take the middle: STANDS.',
    `     ${command} --stop STOP --stands STANDS`,
    '   The stop is off by STANDS − STOP: too far from the end if that is more than nothing.',
    '   To be sure, measure the slot as well, from END to its walls. The two ways have to agree:',
    `     ${command}${set} --stop STOP --stands STANDS --end-nearer NEAR --end-farther FAR`,
  ];
}
