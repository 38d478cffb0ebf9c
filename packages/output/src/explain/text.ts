import {
  dimensionOf,
  type FittedJoint,
  type LengthFormat,
  LOAD_CAUTIONS,
  type Rational,
  reasonWords,
  sagFacts,
  type Text,
  thicknessAxis,
} from '@dryfit/engine';
import type { Locate } from '../place.js';
import { degrees } from '../print/degrees.js';
import { printLength, printText } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { placeOn, surfaceName, surfaceOn } from '../print/surface.js';
import { visible } from '../print/visible.js';
import { padded } from '../table/layout.js';
import { madeUp } from '../tables/spacers.js';
import { errorLines } from './errors.js';
import type { Explained, ExplainedHalf, ExplainedSize } from './explain.js';

export interface ExplainStyle {
  readonly format: LengthFormat;
  readonly locate: Locate;
  readonly paint?: Paint | undefined;
}

/** An explanation for people: each size with the facts that sum to it, and where each slot is. */
export function explainedText(explained: Explained, cabinet: Text, style: ExplainStyle): string {
  const paint = style.paint ?? PLAIN;
  const title = explained.kind === 'part' ? partTitle(explained.part) : explained.joint.id;
  const lines = [paint.strong(visible(`${title}, in ${printText(cabinet, style.format)}`))];
  if (explained.kind === 'part') {
    for (const size of explained.sizes) lines.push('', ...sizeLines(size, explained, style));
    lines.push(...loadLines(explained, style));
  } else lines.push('', ...jointLines(explained.joint, style.format));
  for (const half of explained.halves) lines.push('', ...halfLines(half, explained.kind, style));
  if (explained.kind === 'joint') {
    const errors = errorLines(explained.joint, explained.errors, style.format);
    if (errors.length > 0) lines.push('', paint.strong('how far off it may come'), ...errors);
  }
  if (explained.steps.length > 0)
    lines.push('', paint.strong('glue-up'), ...explained.steps.map((step) => `  ${visible(step)}`));
  return `${lines.join('\n')}\n`;
}

function partTitle(part: Extract<Explained, { kind: 'part' }>['part']): string {
  return `${part.id} (${part.attitude}, ${part.material}, grain along its ${dimensionOf(part.grain)})`;
}

/** `width 564.6`, then one line a fact: what it adds, what it says, where it stands. */
function sizeLines(size: ExplainedSize, { part }: Extract<Explained, { kind: 'part' }>, style: ExplainStyle): string[] {
  const { format, locate, paint = PLAIN } = style;
  const thick = dimensionOf(thicknessAxis(part.attitude)) === size.dimension ? ' (its thickness)' : '';
  if (size.length === undefined)
    return [`${size.dimension}${thick}: not fixed; no chain of facts leads from one side to the other`];
  const lines = [paint.strong(`${size.dimension}${thick}: ${printLength(size.length, format)} ${format.units}`)];
  const facts = size.reasons.map((reason) => {
    const place = reason.source && locate(reason.source);
    return {
      adds: reason.adds.isZero() ? '' : signed(reason.adds, format),
      text: visible(printText(reasonWords(reason), format)),
      where: place === undefined ? '' : visible(`${place.file}:${place.line}`),
    };
  });
  const widest = (pick: (fact: (typeof facts)[number]) => string) =>
    Math.max(0, ...facts.map((fact) => [...pick(fact)].length));
  const [adds, text] = [widest((fact) => fact.adds), widest((fact) => fact.text)];
  for (const fact of facts) {
    lines.push(
      `  ${padded(fact.adds, adds, true)}  ${padded(fact.text, text, false)}  ${paint.faint(fact.where)}`.trimEnd(),
    );
  }
  return lines;
}

/** How a part bends under what it carries, with the assumptions and the cautions that belong to it. */
function loadLines({ load }: Extract<Explained, { kind: 'part' }>, { format, paint = PLAIN }: ExplainStyle): string[] {
  if (load === undefined) return [];
  if (load.kind === 'not reckoned') return ['', paint.strong('load: not reckoned')];
  const facts = sagFacts(load);
  const width = Math.max(...facts.map(({ name }) => name.length));
  return [
    '',
    paint.strong('load'),
    ...facts.map(({ name, value }) => `  ${padded(name, width, false)}  ${visible(printText(value, format))}`),
    ...LOAD_CAUTIONS.map((caution) => paint.faint(`  ${caution}`)),
  ];
}

function signed(length: Rational, format: LengthFormat): string {
  const printed = printLength(length.abs(), format);
  return length.sign() < 0 ? `- ${printed}` : `+ ${printed}`;
}

function jointLines(joint: FittedJoint, format: LengthFormat): string[] {
  const lines = [`${joint.verb}, ${joint.meeting}; written as "${visible(joint.statement)}"`];
  if (joint.mitre && joint.mitre.angle !== 45)
    lines.push(`both ends are sawn ${degrees(joint.mitre.angle)} off square`);
  if (joint.without !== undefined) lines.push(`no connectors: "${visible(joint.without)}"`);
  if (joint.contact !== undefined && joint.run !== undefined) {
    const length = printLength(joint.contact.hi.sub(joint.contact.lo), format);
    lines.push(`the parts touch over ${length} ${format.units} along the ${dimensionOf(joint.run)}`);
  }
  for (const line of joint.lines) {
    if (line.use !== 'used') lines.push(`line ${printLength(line.fromZero, format)} from zero: ${line.use}`);
  }
  return lines;
}

/** What is milled into one part of a joint and how it is set up; a line a fact, its name before it. */
function halfLines(
  explained: ExplainedHalf,
  asked: Explained['kind'],
  { format, paint = PLAIN }: ExplainStyle,
): string[] {
  const { half, joint, part, mate } = explained;
  const say = (text: Text) => printText(text, format);
  const n = half.slots.length;
  const head = `${asked === 'joint' ? `${part.id}: ` : ''}${n} ${joint.connector?.name ?? 'slots'} into its ${surfaceOn(part, half)}${mate === undefined ? '' : `, which meets ${mate.id}`}`;
  const datum = placeOn(part, half, half.datum);
  const facts: [string, string][] = [
    [`from its ${datum}`, half.slots.map((slot) => printLength(slot.fromDatum, format)).join(', ')],
    ['marks', visible(marks(explained, format))],
    [`from its ${referenceWords(explained)}`, printLength(half.across, format)],
    ['depth', printLength(half.depth, format)],
    [
      'spacer',
      say(half.spacer.kind === 'stock' ? [half.spacer.width, ' = ', ...madeUp(half.spacer)] : madeUp(half.spacer)),
    ],
    ['fence', half.turn ? 'none: mark out' : `${datum} at the ${half.hand} fence`],
  ];
  if (half.stop) facts.push(['stop', say([half.stop.at, ` from its ${surfaceName(part, half.stop.end)}`])]);
  if (half.packer) facts.push(['packer', printLength(half.packer, format)]);
  const width = Math.max(...facts.map(([name]) => [...name].length));
  return [paint.strong(visible(head)), ...facts.map(([name, value]) => `  ${padded(name, width, false)}  ${value}`)];
}

function referenceWords({ half, part }: ExplainedHalf): string {
  const { kind, side } = half.from;
  return kind === 'toe' || kind === 'heel' ? `mitre's ${kind} (${surfaceName(part, side)})` : placeOn(part, half, side);
}

/** Where the distances come from: the lines of the pattern, less how far the part's datum lies in from zero. */
function marks({ half, joint }: ExplainedHalf, format: LengthFormat): string {
  const lines = half.slots.map((slot) => printLength(slot.fromZero, format)).join(', ');
  const pattern = joint.pattern === undefined ? '' : ` (pattern ${joint.pattern})`;
  if (half.setback.isZero()) return `${lines} from zero${pattern}`;
  return `${lines} from zero${pattern}, less the setback of ${printLength(half.setback, format)}`;
}
