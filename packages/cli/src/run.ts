import { readFileSync } from 'node:fs';
import { USUAL_VIEW, visible } from '@dryfit/output';
import { Command, CommanderError, Option } from 'commander';
import { build } from './commands/build.js';
import { calibrate } from './commands/calibrate.js';
import { check } from './commands/check.js';
import { consumables } from './commands/consumables.js';
import { draw } from './commands/draw.js';
import { explain } from './commands/explain.js';
import { format } from './commands/format.js';
import { glueUp } from './commands/glue-up.js';
import { patterns } from './commands/patterns.js';
import { plan } from './commands/plan.js';
import { remake } from './commands/remake.js';
import { sheets } from './commands/sheets.js';
import { strip } from './commands/strip.js';
import { tolerance } from './commands/tolerance.js';
import { type Io, MISUSE, Misuse } from './io.js';
import { whole, withFindingOptions, within } from './options.js';

/**
 * Runs the command line and gives its exit code: 0 clean, 1 errors were found, 2 the command was called wrongly or
 * its input cannot be read.
 */
export async function run(args: readonly string[], io: Io): Promise<number> {
  let code = 0;
  const program = commands(io, (result) => {
    code = result;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : MISUSE;
    if (!(error instanceof Misuse)) throw error;
    io.err.write(`dryfit: ${visible(error.message)}\n`);
    return MISUSE;
  }
}

const CODES = `
Exit code: 0 clean, 1 errors were found, 2 called wrongly or input that cannot be read.`;

function commands(io: Io, done: (code: number) => void): Command {
  const program = new Command('dryfit')
    .description(
      'Puts cabinets together from text before anything is cut: sizes, slots, spacers and stops, or what cannot be made.',
    )
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print help')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.out.write(text),
      writeErr: (text) => io.err.write(text),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .showHelpAfterError('(dryfit --help tells more)')
    .addHelpText(
      'after',
      `${CODES}\n\nExamples:\n  dryfit check\n  dryfit build bookcase.joinery --out tables\n  dryfit draw bookcase.joinery --out tables\n  dryfit glue-up bookcase.joinery\n  dryfit explain bookcase.joinery shelf`,
    );

  withFindingOptions(program.command('check'))
    .description('say what cannot be made, by how much, and what would cure it')
    .argument('[paths...]', 'files, or folders whose .joinery files are all checked (default: this folder)')
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .option('--strict', 'exit with 1 on warnings too')
    .addHelpText(
      'after',
      `
Warnings alone leave the exit code at 0, unless --strict is given. What is an error can be made milder and is not
turned off: what cannot be made is allowed in the text, with allow NAME "why".${CODES}

Examples:
  dryfit check
  dryfit check bookcase.joinery
  dryfit check cabinets --strict
  dryfit check bookcase.joinery --units in --denominator 32
  dryfit check . --severity never-measured=info --severity handed=off
  dryfit check . --format json > findings.json`,
    )
    .action(async (paths, options) => done(await check(paths, options, io)));

  withFindingOptions(program.command('build'))
    .description(
      'write the tables of every cabinet and job: parts, slots, spacers, stops, cuts, connectors, consumables',
    )
    .argument('<file>', 'a .joinery file')
    .option('--out <folder>', 'where to write CSV, Markdown and fit.json; without it the tables are printed')
    .option('--with-errors', 'write although there are errors; every table says so')
    .addHelpText(
      'after',
      `
One folder is written for each cabinet (and set of parameters) and each job, all files or none. With errors nothing
is written. Files that an earlier build of the same source wrote and this one does not are removed.${CODES}

Examples:
  dryfit build bookcase.joinery --out tables
  dryfit build bookcase.joinery
  dryfit build railbase.joinery --out tables --units in --denominator 32
  dryfit build bookcase.joinery --out nominal --thickness nominal`,
    )
    .action(async (file, options) => done(await build(file, options, io)));

  withFindingOptions(program.command('draw'))
    .description('draw every cabinet exploded, and each different piece dimensioned, as SVG')
    .argument('<file>', 'a .joinery file')
    .requiredOption('--out <folder>', 'where to write the drawings')
    .option('--part <name>', 'draw this part only ("shelf", "shelf 2")')
    .option(
      '--turn <degrees>',
      'walk round the cabinet, to the right from its front',
      within(-360, 360),
      USUAL_VIEW.turn,
    )
    .option('--tilt <degrees>', 'look down on it; from below if negative', within(-90, 90), USUAL_VIEW.tilt)
    .option('--apart <share>', 'pull its parts apart, from 0 (together) to 1', within(0, 1), USUAL_VIEW.apart)
    .option('--with-errors', 'draw although there are errors; every drawing says so')
    .addHelpText(
      'after',
      `
Drawings of a cabinet go beside its tables, in a folder drawings of their own: exploded.svg, and one for each piece
that differs from the others, called after the first part that is it. All are written or none; with errors none is.
Drawings that were made of the same source earlier and are not now are removed.${CODES}

Examples:
  dryfit draw bookcase.joinery --out tables
  dryfit draw bookcase.joinery --out tables --turn 150 --tilt 10 --apart 0.3
  dryfit draw railbase.joinery --out tables --units mm
  dryfit draw bookcase.joinery --out divider --part divider`,
    )
    .action(async (file, options) => done(await draw(file, options, io)));

  withFindingOptions(program.command('explain'))
    .description('say why a part has its sizes and where each slot of a part or joint is')
    .argument('<file>', 'a .joinery file')
    .argument('<name...>', 'a part ("shelf", "shelf 2"), a joint ("shelf / lh") or a statement')
    .option('--cabinet <name>', 'only in this cabinet')
    .addHelpText(
      'after',
      `${CODES}

Examples:
  dryfit explain bookcase.joinery divider
  dryfit explain bookcase.joinery shelf 2
  dryfit explain bookcase.joinery "shelf 2 / lh"`,
    )
    .action(async (file, name, options) => done(await explain(file, name, options, io)));

  withFindingOptions(program.command('plan'))
    .description('say in which set-ups a job is milled, and in which order they cost least to change')
    .argument('<file>', 'a .joinery file with a job')
    .argument('[job]', 'the job, where the file has several')
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .option('--seconds <n>', 'how long the plan may be reckoned on', within(0.1, 3600), 10)
    .option('--with-errors', 'plan although there are errors; every table says so')
    .addHelpText(
      'after',
      `
Operations with one setting of jig and machine are one set-up. Where an operation can be set up in more than one way,
the way that costs least in all is taken. What is not proven to be least is told with the bound that is.${CODES}

Examples:
  dryfit plan periodicals.joinery
  dryfit plan periodicals.joinery Library --seconds 60
  dryfit plan periodicals.joinery --format json > plan.json`,
    )
    .action(async (file, job, options) => done(await plan(file, job, options, io)));

  withFindingOptions(program.command('consumables'))
    .description(
      'say what a job uses up, and what is bought for it: connectors, bands and glue, by the packs they come in',
    )
    .argument('<file>', 'a .joinery file with a job')
    .argument('[job]', 'the job, where the file has several')
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .option('--with-errors', 'count although there are errors; the table says so')
    .addHelpText(
      'after',
      `
Packs and rolls are those that the shop writes, as in packs of 100, 1000. Of all choices that cover the need the one
that leaves least over is taken, and of these the one with the fewest packs.${CODES}

Examples:
  dryfit consumables periodicals.joinery
  dryfit consumables periodicals.joinery Library --format json > consumables.json`,
    )
    .action(async (file, job, options) => done(await consumables(file, job, options, io)));

  withFindingOptions(program.command('tolerance'))
    .description('say how far off joints and sizes may come, from what, and what another batch of sheets does')
    .argument('<file>', 'a .joinery file')
    .option('--cabinet <name>', 'only this cabinet')
    .option('--samples <n>', 'cabinets tried by chance; 0 for none', whole(0, 10_000_000), 10_000)
    .option('--seed <n>', 'where chance starts; the same seed tries the same cabinets', whole(0, 2 ** 31 - 1), 1)
    .option(
      '--measure <material=thickness>',
      'what if a batch measures that; may be given again for others',
      (words: string, before: readonly string[] = []) => [...before, words],
    )
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
Only what the text and the shop say is off is counted: tolerances of sheets, machines and written lengths, and the
shop's block of tolerances. Errors are added by root sum square and all at once; what is let pass stands in the
shop's limits. With --measure it says what has to be re-cut and re-set, and what comes of it where nothing is.${CODES}

Examples:
  dryfit tolerance bookcase.joinery
  dryfit tolerance bookcase.joinery --samples 200000 --seed 7
  dryfit tolerance bookcase.joinery --measure birch18=17.4
  dryfit tolerance bookcase.joinery --format json > tolerance.json`,
    )
    .action(async (file, options) => done(await tolerance(file, options, io)));

  withFindingOptions(program.command('glue-up'))
    .description('say in what order a cabinet is glued up: parts, joints, connectors and clamps, step by step')
    .argument('<file>', 'a .joinery file')
    .option('--cabinet <name>', 'only this cabinet')
    .option('--out <folder>', 'write a sheet with a drawing of each step; without it the steps are printed')
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .option('--with-errors', 'order the parts although there are errors; every sheet says so')
    .addHelpText(
      'after',
      `
Parts come in straight moves, one group at a time; groups may be glued up on their own first. Joints that close only
at the same time are told together. With glue open and joint closed in among the shop's limits, steps are divided until
each closes before the glue sets, where the order allows it. Clamps are counted by the length of the joints, an estimate.
Sheets go beside a cabinet's tables, in a folder glue-up of their own.${CODES}

Examples:
  dryfit glue-up bookcase.joinery
  dryfit glue-up bookcase.joinery --out tables
  dryfit glue-up bookcase.joinery --format json > glue-up.json`,
    )
    .action(async (file, options) => done(await glueUp(file, options, io)));

  withFindingOptions(program.command('patterns'))
    .description('say which fixed patterns a shop needs for its cabinets, and what one more would bring')
    .argument('[paths...]', 'files, or folders whose .joinery files are all read (default: this folder)')
    .addHelpText(
      'after',
      `
A pattern serves a joint if it puts as many connectors into it and brings no new finding.${CODES}

Examples:
  dryfit patterns
  dryfit patterns cabinets shop.joinery`,
    )
    .action(async (paths, options) => done(await patterns(paths, options, io)));

  withFindingOptions(program.command('sheets'))
    .description('write what the bench reads: a printed page for each set-up of a job, a cover, and labels')
    .argument('<file>', 'a .joinery file with a job')
    .argument('[job]', 'the job, where the file has several')
    .requiredOption('--out <folder>', 'where to write sheets and labels, as HTML and PDF')
    .addOption(new Option('--paper <size>', 'what they are printed on').choices(['A4', 'Letter']).default('A4'))
    .option('--set-up <n>', 'one set-up alone, by its number in the plan', whole(1, 1_000_000))
    .option('--seconds <n>', 'how long the plan may be reckoned on', within(0.1, 3600), 10)
    .option('--with-errors', 'write although there are errors; every page says so')
    .addHelpText(
      'after',
      `
Print at actual size. The pages are black on white, and everything on them stands there in words.${CODES}

Examples:
  dryfit sheets periodicals.joinery --out tables
  dryfit sheets periodicals.joinery --out tables --set-up 3
  dryfit sheets railbase.joinery Order --out tables --paper Letter --units in`,
    )
    .action(async (file, job, options) => done(await sheets(file, job, options, io)));

  withFindingOptions(program.command('strip'))
    .description('write patterns of lines in their true size, to be laid along the bed of the jig')
    .argument('<file>', 'a .joinery file with patterns, or one that imports such')
    .argument('[pattern]', 'the pattern; all with fixed lines unless said')
    .requiredOption('--out <folder>', 'where to write the strips, each as HTML and PDF')
    .option('--length <length>', 'of the part, for patterns that are spread over it; in the units of the file')
    .addOption(new Option('--paper <size>', 'what they are printed on').choices(['A4', 'Letter']).default('A4'))
    .option('--with-errors', 'write although there are errors; every page says so')
    .addHelpText(
      'after',
      `
Print at actual size, and hold a rule to the line on each page that says how long it is. A strip has a row for either
fence and is as long as the bed; without a bed each hand has a strip of its own. Lines of the two hands that nearly
coincide are told.${CODES}

Examples:
  dryfit strip shop.joinery --out tables
  dryfit strip shop.joinery deep5 --out tables --paper Letter
  dryfit strip shop.joinery high4 --length 564 --out tables`,
    )
    .action(async (file, pattern, options) => done(await strip(file, pattern, options, io)));

  withFindingOptions(program.command('remake'))
    .description('write what it takes to make one spoilt piece of a job again: its own pages and its label')
    .argument('<file>', 'a .joinery file with a job')
    .argument('<job>', 'the job')
    .argument('<part...>', 'the piece: lh, "lh of Periodicals(wide = 450)", or what the code of its label says')
    .requiredOption('--out <folder>', 'where to write its pages and its label, as HTML and PDF')
    .option('--number <n>', 'of which of the cabinets that are alike it is, for the label', whole(1, 1_000_000))
    .addOption(new Option('--paper <size>', 'what they are printed on').choices(['A4', 'Letter']).default('A4'))
    .option('--seconds <n>', 'how long the plan may be reckoned on', within(0.1, 3600), 10)
    .option('--with-errors', 'write although there are errors; every page says so')
    .addHelpText(
      'after',
      `
The piece is milled with the settings that the job's plan has for it, so that it fits its mates, in the order that costs
least for it alone. What the text cannot know is told: what was cut to fit, and what thickness the new sheet has.${CODES}

Examples:
  dryfit remake periodicals.joinery Library "lh of Periodicals(wide = 450)" --out tables
  dryfit remake bookcase.joinery Order divider --out tables --number 2`,
    )
    .action(async (file, job, part, options) => done(await remake(file, job, part, options, io)));

  withFindingOptions(program.command('calibrate'))
    .description(
      'say how to mill a test joint, and what one tells of the machine and the jig: base to centre, depth, and stop',
    )
    .argument('<file>', 'a .joinery file with the machine, or one that imports it')
    .argument('<machine>', 'the machine')
    .option('--scrap <length>', 'thickness of the test pieces, as measured')
    .option('--reference-proud <length>', 'step of the test joint, where the REFERENCE face stands proud; 0 if flush')
    .option('--plain-proud <length>', 'step of the test joint, where the PLAIN face stands proud')
    .option('--nearer <length>', 'from the REFERENCE face of one piece to the nearer wall of its slot')
    .option('--farther <length>', 'from there to the farther wall')
    .option('--gap <length>', 'opening of the test joint, pressed home; 0 if it closes')
    .option('--depth <length>', 'of a slot in an edge, as measured')
    .option('--connector <name>', 'whose depth was set, where the machine cuts for several')
    .option('--across <length>', 'what the connector measures across the joint; as written unless said')
    .option('--stop <length>', 'what the stop of the jig was set to, for a slot in a face')
    .option('--stands <length>', 'from the END to the REFERENCE face of the piece that stands on that slot')
    .option('--end-nearer <length>', 'from the END to the nearer wall of that slot')
    .option('--end-farther <length>', 'from there to the farther wall')
    .option('--set <length>', 'what the base was set to, where it can be set')
    .option('--within <length>', 'how far each measured figure may be off; 0.05 mm unless said')
    .addOption(new Option('--format <format>', 'what to print').choices(['text', 'json']).default('text'))
    .addHelpText(
      'after',
      `
Without a measured figure it says how to mill and to measure the test joint, and why one half is turned over. Plain
numbers are in the units of the file. It changes no file: it prints what to write, and where. What is off by no more
than measuring may be is left as it is.${CODES}

Examples:
  dryfit calibrate shop.joinery joiner
  dryfit calibrate shop.joinery joiner --scrap 17.65 --reference-proud 1.1
  dryfit calibrate bookcase.joinery joiner --nearer 7.4 --farther 11.4
  dryfit calibrate shop.joinery joiner --connector biscuit20 --gap 0.4
  dryfit calibrate bookcase.joinery joiner --stop 100 --stands 100.3
  dryfit calibrate shop.joinery mortiser --set 9.5 --scrap 17.7 --plain-proud 0.2`,
    )
    .action(async (file, machine, options) => done(await calibrate(file, machine, options, io)));

  program
    .command('format')
    .description('bring files into the one layout')
    .argument('<paths...>', 'files, or folders whose .joinery files are all formatted')
    .option('--check', 'change nothing; exit with 1 if anything would be')
    .addHelpText(
      'after',
      `
Meaning and comments stay as they are; a line that cannot be read is left alone.${CODES}

Examples:
  dryfit format bookcase.joinery
  dryfit format cabinets --check`,
    )
    .action(async (paths, options) => done(await format(paths, options, io)));

  return program;
}

function version(): string {
  return JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version;
}
