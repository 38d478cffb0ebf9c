import {
  type Batch,
  ifCutAsPlanned,
  ifMeasured,
  type LengthFormat,
  type Otherwise,
  type Spec,
  toldOff,
} from '@dryfit/engine';
import { printLength } from '../print/length.js';
import { type Paint, PLAIN } from '../print/paint.js';
import { visible } from '../print/visible.js';
import { jointOf, resultWords } from './words.js';

/**
 * What another batch of sheets does to a cabinet: what has to be re-cut and re-set, and what comes of it where
 * everything is left as it was.
 */
export function batchText(spec: Spec, batch: Batch, format: LengthFormat, paint: Paint = PLAIN): string {
  const other = ifMeasured(spec, batch);
  const names = [...batch].map(([name, value]) => `${name} measures ${printLength(value, format)}`);
  return [
    paint.strong(visible(`If ${names.join(' and ')}`)),
    ...section('re-cut', recutLines(other, format), 'no sawn size changes'),
    ...section('re-set', resetLines(other, format), 'no stop, spacer, base or line changes'),
    ...section('cut anew', cutLines(other), 'no groove, housing, rebate or notch changes'),
    ...section(
      'left as it was, cut and milled',
      asPlanned(spec, batch, format),
      'nothing moves: the thickness has dropped out',
    ),
    '',
  ]
    .map((line) => line.trimEnd())
    .join('\n');
}

const section = (title: string, lines: readonly string[], none: string): string[] =>
  lines.length === 0 ? [`  ${title}: ${none}`] : [`  ${title}:`, ...lines.map((line) => `    ${visible(line)}`)];

/** Lines that differ in their parts alone become one. */
function together(rows: readonly (readonly [part: string, what: string])[]): string[] {
  const groups = new Map<string, string[]>();
  for (const [part, what] of rows) groups.set(what, [...(groups.get(what) ?? []), part]);
  return [...groups].map(([what, parts]) => `${[...new Set(parts)].join(', ')}: ${what}`);
}

const change = ({ from, to }: Otherwise['recut'][number]['change'], format: LengthFormat): string => {
  const by = to.sub(from);
  return `${printLength(from, format)} becomes ${printLength(to, format)} (${by.sign() > 0 ? '+' : ''}${toldOff(by, format.units)})`;
};

const recutLines = ({ recut }: Otherwise, format: LengthFormat): string[] =>
  together(recut.map(({ part, size, change: by }) => [part, `${size} ${change(by, format)}`]));

const WHAT = { stop: 'stop', spacer: 'spacer', across: 'base, or the distance from the reference,', slot: 'line' };

const resetLines = ({ reset }: Otherwise, format: LengthFormat): string[] =>
  together(
    reset.map(({ joint, part, what, change: by }) => [`${part} (${joint})`, `${WHAT[what]} ${change(by, format)}`]),
  );

const cutLines = ({ cuts }: Otherwise): string[] =>
  together(cuts.map(({ part, kind, joint }) => [part, joint ? `${kind} of ${joint}` : kind]));

function asPlanned(spec: Spec, batch: Batch, format: LengthFormat): string[] {
  return together(
    ifCutAsPlanned(spec, batch).map(({ result, by }) => [
      jointOf(result)?.id ?? 'the cabinet',
      `${resultWords(result.about, format)} off by ${toldOff(by, format.units)}`,
    ]),
  );
}
