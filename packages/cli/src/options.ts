import type { LengthFormat, Units } from '@dryfit/engine';
import { type Severities, WANTED_SEVERITIES } from '@dryfit/language';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { Misuse } from './io.js';

/** Options of every command that prints lengths, as the command line gives them. */
export interface LengthOptions {
  readonly units?: Units | undefined;
  readonly denominator?: number | undefined;
  readonly thickness: 'nominal' | 'measured';
}

/** Adds --units, --denominator and --thickness to a command. */
function withLengthOptions(command: Command): Command {
  return command
    .addOption(
      new Option('--units <units>', 'print lengths in mm or in; as the file is written unless said').choices([
        'mm',
        'in',
      ]),
    )
    .option(
      '--denominator <n>',
      'finest fraction of an inch, 64 unless said; what rounding loses is shown',
      denominator,
    )
    .addOption(
      new Option('--thickness <which>', 'work sizes from the nominal or the measured thickness of the sheets')
        .choices(['nominal', 'measured'])
        .default('measured'),
    );
}

/** How lengths are printed, for files written in `written`. */
export function lengthFormat(options: LengthOptions, written: Units): LengthFormat {
  const units = options.units ?? written;
  if (options.denominator !== undefined && units === 'mm') {
    throw new Misuse('--denominator is about inches; say --units in as well');
  }
  return { units, denominator: options.denominator };
}

const MOST = 1024;

function denominator(words: string): number {
  const n = Number(words);
  if (!/^\d+$/.test(words) || n < 1 || n > MOST) {
    throw new InvalidArgumentError(`It must be a whole number from 1 to ${MOST}, such as 32.`);
  }
  return n;
}

/** Options of every command that works cabinets out and tells findings of them. */
export interface FindingOptions extends LengthOptions {
  readonly severity?: Severities | undefined;
}

/** Adds --severity and the options of lengths to a command. */
export function withFindingOptions(command: Command): Command {
  return withLengthOptions(command).option(
    '--severity <check=severity>',
    'take the findings of a check as error, warning or info, or turn it off; may be given again for others',
    severity,
  );
}

function severity(words: string, before: Severities = {}): Severities {
  const [name = '', wanted, ...more] = words.split('=');
  const known = WANTED_SEVERITIES.find((one) => one === wanted);
  if (name === '' || known === undefined || more.length > 0) {
    throw new InvalidArgumentError(`Write the name of a check, = and ${WANTED_SEVERITIES.join(', ')}.`);
  }
  return { ...before, [name]: known };
}

/** Reads a number of an option that goes from `least` to `most`. */
export function within(least: number, most: number): (words: string) => number {
  return (words) => {
    const n = Number(words);
    if (words.trim() === '' || !(n >= least && n <= most)) {
      throw new InvalidArgumentError(`It must be a number from ${least} to ${most}.`);
    }
    return n;
  };
}

/** Reads a whole number of an option that goes from `least` to `most`. */
export function whole(least: number, most: number): (words: string) => number {
  return (words) => {
    const n = Number(words);
    if (!/^\d+$/.test(words) || n < least || n > most) {
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    }
    return n;
  };
}
