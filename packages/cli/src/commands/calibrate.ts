import {
  baseFromStep,
  baseFromWalls,
  baseMoves,
  type Connector,
  depthFromDepth,
  depthFromGap,
  type Machine,
  MEASURED_WITHIN,
  Rational,
  type Shop,
  stopMoves,
} from '@dryfit/engine';
import {
  type BaseFound,
  type CalibrationReport,
  cabinetLabel,
  calibrationHowTo,
  calibrationJson,
  calibrationText,
  canBeSet,
  type DepthReport,
  isCertain,
  type StopReport,
} from '@dryfit/output';
import type { Examination } from '../examination.js';
import { examineFile } from '../examine.js';
import { lengthOption } from '../input/length.js';
import { CLEAN, type Io, Misuse } from '../io.js';
import { type FindingOptions, lengthFormat } from '../options.js';
import { paintFor } from '../paint.js';
import { type StopFound, stopFound } from '../stop-found.js';
import { variants } from '../variants.js';

/** Lengths as written: "17.7", "11/16in". */
export interface CalibrateOptions extends FindingOptions {
  readonly scrap?: string | undefined;
  readonly referenceProud?: string | undefined;
  readonly plainProud?: string | undefined;
  readonly nearer?: string | undefined;
  readonly farther?: string | undefined;
  readonly gap?: string | undefined;
  readonly depth?: string | undefined;
  readonly connector?: string | undefined;
  readonly across?: string | undefined;
  readonly stop?: string | undefined;
  readonly stands?: string | undefined;
  readonly endNearer?: string | undefined;
  readonly endFarther?: string | undefined;
  readonly set?: string | undefined;
  readonly within?: string | undefined;
  readonly format?: 'text' | 'json' | undefined;
}

/** Says how a test joint is milled, or what one tells of the machine that it was milled with. Writes nothing. */
export async function calibrate(file: string, name: string, options: CalibrateOptions, io: Io): Promise<number> {
  const examination = await examineFile(file, options, io);
  const format = lengthFormat(options, examination.units);
  const { machine, connectors, shop } = machineOf(examination, file, name);
  const lengths = lengthsOf(options, examination);
  const paint = paintFor(io.out, io.env);
  const isMeasured = MEASURED.some((one) => options[one] !== undefined);
  if (!isMeasured) {
    if (options.format === 'json')
      throw new Misuse('nothing was measured, so there is no data; dryfit calibrate --help tells what to give');
    const { jig, limits } = shop;
    const howTo = { file, machine, connectors, scrap: lengths.scrap, wall: limits.wall, jig };
    io.out.write(calibrationHowTo(howTo, format, paint));
    return CLEAN;
  }
  const within = lengths.within ?? MEASURED_WITHIN;
  const base = baseOf(options, lengths, machine, within);
  const depth = depthOf(options, lengths, connectors, within);
  const stop = stopFound(lengths, shop, machine, lengths.set, within);
  const set = setOf(base !== undefined || stop?.walls !== undefined, lengths.set, machine);
  const corrected = base && !canBeSet(machine) && isCertain(base.found, set) ? base.found.value : undefined;
  const report: CalibrationReport = {
    machine,
    ...placeOf(examination, machine),
    set,
    within,
    base,
    depth,
    stop: stop && stopReport(stop, examination),
    cabinets: corrected
      ? variants(examination).map(({ result }) => ({
          label: cabinetLabel(result.fit),
          moves: baseMoves(result.spec, machine.name, corrected),
        }))
      : [],
  };
  if (options.format === 'json') io.out.write(`${JSON.stringify(calibrationJson(report), undefined, 2)}\n`);
  else io.out.write(calibrationText(report, format, paint));
  return CLEAN;
}

const STOP = ['stop', 'stands', 'endNearer', 'endFarther'] as const;
const MEASURED = ['referenceProud', 'plainProud', 'nearer', 'farther', 'gap', 'depth', ...STOP] as const;

type Lengths = ReturnType<typeof lengthsOf>;

function lengthsOf(options: CalibrateOptions, { units }: Examination) {
  const some = (option: string, words: string | undefined) => lengthOption(option, words, units, 'above zero');
  const any = (option: string, words: string | undefined) => lengthOption(option, words, units, 'zero');
  return {
    scrap: some('--scrap', options.scrap),
    referenceProud: any('--reference-proud', options.referenceProud),
    plainProud: any('--plain-proud', options.plainProud),
    nearer: some('--nearer', options.nearer),
    farther: some('--farther', options.farther),
    gap: any('--gap', options.gap),
    depth: some('--depth', options.depth),
    across: some('--across', options.across),
    stop: some('--stop', options.stop),
    stands: some('--stands', options.stands),
    endNearer: some('--end-nearer', options.endNearer),
    endFarther: some('--end-farther', options.endFarther),
    set: some('--set', options.set),
    within: any('--within', options.within),
  };
}

function machineOf(examination: Examination, file: string, name: string) {
  const shop: Shop | undefined = examination.shop();
  const machine = shop?.machines.get(name);
  if (!shop || !machine) {
    const own = [...(shop?.machines.values() ?? [])].map((one) => one.name).sort();
    throw new Misuse(
      own.length === 0
        ? `there is no machine in ${file}, nor in what it imports`
        : `there is no machine ${name} in ${file}, nor in what it imports; there is ${own.join(', ')}`,
    );
  }
  const connectors = [...shop.connectors.values()].filter((one) => one.machine === name);
  return { shop, machine, connectors };
}

function baseOf(
  options: CalibrateOptions,
  { scrap, referenceProud, plainProud, nearer, farther }: Lengths,
  { kerf }: Machine,
  within: Rational,
): BaseFound | undefined {
  if (referenceProud && plainProud) throw new Misuse('give --reference-proud or --plain-proud, not both');
  const step = referenceProud ?? plainProud?.neg();
  if ((nearer === undefined) !== (farther === undefined))
    throw new Misuse('a slot is measured to both its walls: give --nearer and --farther');
  if (step && nearer)
    throw new Misuse('give the step of a test joint or the walls of one slot, not both: one call for each');
  if (nearer && farther) {
    if (!nearer.lt(farther)) throw new Misuse('--nearer is to be less than --farther: both from the REFERENCE face');
    const { base, kerf: width } = baseFromWalls({ nearer, farther }, within);
    return { from: 'walls', walls: { nearer, farther }, found: base, kerf: width };
  }
  if (!step) return undefined;
  if (!scrap) throw new Misuse('the step alone does not tell: give the thickness of the test pieces with --scrap');
  const joint = { thickness: scrap, step };
  const found = baseFromStep(joint, within);
  const half = kerf.div(Rational.TWO);
  if (found.value.sub(half).sign() <= 0 || found.value.add(half).ge(scrap))
    throw new Misuse(
      `no slot of the machine could lie in ${options.scrap} with such a step (${options.referenceProud ?? options.plainProud}): measure again, and see which face stands proud`,
    );
  return { from: 'joint', joint, found };
}

function depthOf(
  { connector: name }: CalibrateOptions,
  { gap, depth, across }: Lengths,
  connectors: readonly Connector[],
  within: Rational,
): DepthReport | undefined {
  if (gap && depth) throw new Misuse('give --gap or --depth, not both: one call for each');
  if (!gap && !depth) return undefined;
  const names = connectors.map((one) => one.name).sort();
  const connector = connectors.find((one) => one.name === name) ?? (name === undefined ? only(connectors) : undefined);
  if (!connector) {
    if (names.length === 0) throw new Misuse('no connector is cut by this machine, so there is no depth to find');
    const which = name === undefined ? 'it cuts for several' : `it cuts for no ${name}`;
    throw new Misuse(
      `the depth is set for a connector, and ${which}: name one of ${names.join(', ')} with --connector`,
    );
  }
  if (depth) return { from: 'depth', connector, depth, found: depthFromDepth(connector, depth, within) };
  const long = across ?? connector.across;
  if (gap?.ge(long)) throw new Misuse(`--gap is more than the connector is long across the joint`);
  const open = gap ?? Rational.ZERO;
  return { from: 'gap', connector, across: long, gap: open, found: depthFromGap(connector, long, open, within) };
}

const only = (connectors: readonly Connector[]): Connector | undefined =>
  connectors.length === 1 ? connectors[0] : undefined;

/** The base that the test was milled with. */
function setOf(isWanted: boolean, set: Rational | undefined, machine: Machine): Rational {
  const { least, most } = machine.base;
  if (!isWanted) return set ?? least;
  if (!canBeSet(machine)) {
    if (set) throw new Misuse(`the base of ${machine.name} is fixed; --set is for machines whose base can be set`);
    return least;
  }
  if (!set) throw new Misuse(`the base of ${machine.name} can be set: give what it was set to with --set`);
  if (set.lt(least) || set.gt(most))
    throw new Misuse(`--set is outside of what the base of ${machine.name} can be set to`);
  return set;
}

/** With what the stop does to the cabinets of the file, if it is off for certain. */
function stopReport(found: StopFound, examination: Examination): StopReport {
  const { jig } = found;
  const quoted = examination.locate(jig.source);
  const isOff = isCertain(found.found, Rational.ZERO);
  return {
    ...found,
    place: quoted && `${quoted.file}:${quoted.line}`,
    moved: isOff
      ? variants(examination).map(({ result }) => ({
          label: cabinetLabel(result.fit),
          moves: stopMoves(result.fit, jig, found.found.value),
        }))
      : [],
  };
}

/** Where the machine is described, and how plain numbers are read there. */
function placeOf({ locate, unitsOf }: Examination, { source }: Machine) {
  const quoted = locate(source);
  return {
    place: quoted && `${quoted.file}:${quoted.line}`,
    isOwn: source.uri.startsWith('file:'),
    plainIsMm: unitsOf(source.uri) === 'mm',
  };
}
