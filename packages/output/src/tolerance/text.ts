import {
  type Contributor,
  type Figures,
  figuresOf,
  type LengthFormat,
  type Reckoned,
  type Result,
  resultsOf,
  type Trials,
  toldOff,
  tryResults,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import type { Locate } from '../place.js';
import { printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { figuresWords, jointOf, resultWords } from './words.js';

export interface ToleranceStyle {
  readonly format: LengthFormat;
  readonly locate: Locate;
  readonly paint?: Paint | undefined;
  /** Trials to make, and the seed they start from; none with 0. */
  readonly samples: number;
  readonly seed: number;
}

/** Most contributors that one result lists; the rest is told together. */
const MOST = 3;
/** What has less of a part than this reads as 0 %. */
const TELLING = 0.005;

interface Told {
  readonly result: Result;
  readonly figures: Figures;
  readonly trials: Trials | undefined;
}

/** Everything that may be off in a cabinet, for people: joint by joint, then the cabinet, then where figures stand. */
export function toleranceText(reckoned: Reckoned, style: ToleranceStyle): string {
  const { format, paint = PLAIN } = style;
  const results = resultsOf(reckoned);
  const trials = style.samples > 0 ? tryResults(results, style.samples, style.seed) : undefined;
  const told = results.map((result) => ({
    result,
    figures: figuresOf(result.adds),
    trials: trials?.get(result.id),
  }));
  const lines = [
    paint.strong(
      visible(
        `How far off ${printText(cabinetLabel(reckoned.fit), format)} may come, in ${format.units === 'mm' ? 'mm' : 'inches'}`,
      ),
    ),
  ];
  lines.push(...headLines(reckoned, style), '');
  for (const group of byJoint(told)) {
    lines.push(paint.strong(visible(group.title)));
    for (const one of group.told) lines.push(...resultLines(one, style));
    lines.push(...sheetLines(group.told, format).map((line) => `  ${line}`), '');
  }
  const whole = told.filter(({ result }) => jointOf(result) === undefined);
  if (whole.length > 0) {
    lines.push(paint.strong('The cabinet'), ...whole.flatMap((one) => resultLines(one, style)), '');
  }
  lines.push(...sourceLines(told, style));
  return `${lines.join('\n').trimEnd()}\n`;
}

function headLines({ reckoning, unsaid }: Reckoned, { samples, seed }: ToleranceStyle): string[] {
  return [
    'First by root sum square, then everything off at once; more than nothing is proud, further away, open.',
    `Held against the limits by ${reckoning}.`,
    ...(samples > 0
      ? [`Tried ${samples} times from seed ${seed}; each written tolerance is taken for three standard deviations.`]
      : []),
    ...(unsaid.length > 0 ? [`Nothing is said of, and nothing counted for: ${unsaid.join(', ')}.`] : []),
  ].map(visible);
}

/** Joints that a statement makes alike and that come out alike are told once. */
function byJoint(told: readonly Told[]): readonly { readonly title: string; readonly told: readonly Told[] }[] {
  const joints = new Map<string, Told[]>();
  for (const one of told) {
    const joint = jointOf(one.result);
    if (!joint) continue;
    const known = joints.get(joint.id);
    if (known) known.push(one);
    else joints.set(joint.id, [one]);
  }
  const groups = new Map<string, { names: string[]; statement: string; told: readonly Told[] }>();
  for (const [id, own] of joints) {
    const joint = own[0] && jointOf(own[0].result);
    const key = JSON.stringify([joint?.statement, own.map(sameness)]);
    const known = groups.get(key);
    if (known) known.names.push(id);
    else groups.set(key, { names: [id], statement: joint?.statement ?? '', told: own });
  }
  return [...groups.values()].map(({ names, statement, told: own }) => ({
    title: `${names.join('; ')} (${statement})`,
    told: own,
  }));
}

/** What has to be equal for two results to be told as one; an opening at either end counts as one. */
function sameness({ result: { about }, figures }: Told): unknown {
  const value = (length: Figures['worst']['least']) =>
    'value' in length ? length.value.toFixed(6) : length.toString();
  return [
    about.kind,
    about.kind === 'gap' || !('side' in about) ? '' : about.side,
    value(figures.worst.least),
    value(figures.worst.most),
    figures.rootSumSquare.half.value.toFixed(6),
  ];
}

function resultLines({ result, figures, trials }: Told, style: ToleranceStyle): string[] {
  const { format, paint = PLAIN } = style;
  const { limit } = result;
  const pass = limit ? `; ${toldOff(limit, format.units)} is let pass` : '';
  const words = figuresWords(figures, format);
  const lines = [`  ${visible(resultWords(result.about, format))}: ${words}${words === 'nothing' ? '' : pass}`];
  if (figures.contributions.length === 0 || words === 'nothing') return lines;
  lines.push(paint.faint(`    ${visible(fromWords(figures, format))}`));
  if (trials) lines.push(paint.faint(`    ${trialWords(trials, format)}`));
  return lines;
}

function fromWords({ contributions }: Figures, format: LengthFormat): string {
  const telling = contributions.slice(0, MOST).filter(({ share }, i) => i === 0 || share >= TELLING);
  const shown = telling.map(({ of, share }) => `${printText(of.words, format)} ${percent(share)}`);
  const rest = contributions.slice(telling.length);
  const others = rest.reduce((sum, { share }) => sum + share, 0);
  const more = rest.length > 0 ? `, ${rest.length} more ${percent(others)}` : '';
  return `from ${shown.join(', ')}${more}`;
}

function trialWords({ mean, deviation, beyond }: Trials, { units }: LengthFormat): string {
  const [middle, three] = [
    toldOff({ value: mean, error: 0 }, units),
    toldOff({ value: 3 * deviation, error: 0 }, units),
  ];
  const over = beyond === undefined ? '' : `, ${percent(beyond, 2)} beyond what is let pass`;
  return `tried: ${middle} ± ${three} (three deviations)${over}`;
}

/** Whether the thickness of the sheet comes into a step, and what it would do from the other face. */
function sheetLines(told: readonly Told[], { units }: LengthFormat): string[] {
  return told.flatMap(({ result: { about, adds } }) => {
    if (about.kind !== 'step' || !('stack' in adds)) return [];
    const sheets = adds.stack.terms.filter(({ of }) => of.origin === 'thickness');
    const tell = (terms: typeof sheets) =>
      terms.map(({ of, coefficient }) => {
        const much = toldOff(coefficient.abs().mul(of.plus.gt(of.minus) ? of.plus : of.minus), units);
        return `up to ${much}`;
      });
    if (sheets.length > 0)
      return [
        `The thickness of the sheet comes into the step at the ${about.side}, ${tell(sheets).join(' and ')}: the slots are measured from the other face.`,
      ];
    const other = about.otherFace?.terms.filter(({ of }) => of.origin === 'thickness') ?? [];
    if (other.length === 0) return [];
    return [
      `The thickness of the sheet drops out at the ${about.side}: both halves are measured from there. From the other face it would come in, ${tell(other).join(' and ')}.`,
    ];
  });
}

/** Where each figure stands, once for all that it is the figure of. */
function sourceLines(told: readonly Told[], { format, locate, paint = PLAIN }: ToleranceStyle): string[] {
  const places = new Map<string, { what: string; where: string }>();
  for (const { figures } of told)
    for (const { of } of figures.contributions) {
      const place = of.source && locate(of.source);
      const where = place ? `${place.file}:${place.line}` : '';
      places.set(`${of.origin} ${where}`, { what: originWords(of, format), where });
    }
  if (places.size === 0) return [];
  const rows = [...places.values()].sort((a, b) => (a.what < b.what ? -1 : 1));
  return [
    paint.strong('Where the figures stand'),
    ...rows.map(({ what, where }) => visible(`  ${what}${where ? `: ${where}` : ''}`)),
  ];
}

function originWords({ origin, plus, minus, sheet }: Contributor, { units }: LengthFormat): string {
  const told = (length: typeof plus) => (origin === 'mitre' ? `${length.toNumber()}°` : toldOff(length, units));
  const name = origin === 'thickness' && sheet ? `thickness of ${sheet}` : origin;
  if (plus.equals(minus)) return `${name} ± ${told(plus)}`;
  return minus.isZero() ? `${name} up to ${told(plus)}` : `${name} plus ${told(plus)} minus ${told(minus)}`;
}

const percent = (share: number, places = 0): string => `${(share * 100).toFixed(places)} %`;
