import {
  AXES,
  type Axis,
  dimensionOf,
  type FitResult,
  type FittedPart,
  type Half,
  LOAD_CAUTIONS,
  type Material,
  type PartId,
  type Rational,
  reasonWords,
  sagFacts,
  sagOf,
  thicknessAxis,
  type Units,
} from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { block, code, paragraphs, plain, table } from './markdown.js';
import { placeOn, surfaceOn } from './surface.js';

export type Picture = (result: FitResult, part: PartId, units: Units) => string | undefined;

/**
 * A part: finished and cut size, each size with the facts that add up to it, its bands and what is milled into it.
 * Undefined if the fit has no such part.
 * @param name a part, "shelf 2", or the name that like parts share
 * @param picture a drawing of a part, as the address of an image, where one can be shown
 */
export function partHover(result: FitResult, name: string, lengths: Lengths, picture?: Picture): string | undefined {
  const parts = result.fit.parts.filter((part) => part.id === name || part.kind === name);
  const [part, ...others] = parts;
  if (part === undefined) return undefined;
  const alike = others.every(({ same }) => same === part.same);
  const count = parts.length === 1 ? 'one' : String(parts.length);
  const what = `${part.attitude} part${parts.length === 1 ? '' : 's'} of ${material(result, part, lengths)}`;
  const title = `**${plain(name)}**: ${count} ${what}${parts.length > 1 && alike ? ', all alike' : ''}`;
  return alike ? onePiece(result, title, part, lengths, picture) : paragraphs(title, sizesTable(parts, lengths));
}

function onePiece(
  result: FitResult,
  title: string,
  part: FittedPart,
  lengths: Lengths,
  picture: Picture | undefined,
): string {
  const address = picture?.(result, part.id, lengths.units);
  const same = result.fit.parts.filter((other) => other.same === part.same && other.kind !== part.kind);
  return paragraphs(
    title,
    `Finished ${lengths.product(AXES.map((axis) => part.extent[axis]))} (width × depth × height)`,
    cutSize(part, lengths),
    address === undefined
      ? ''
      : `![${plain(part.id)}, drawn with what is milled into it; the figures stand below](${address})`,
    same.length === 0 ? '' : `The same piece as ${same.map(({ id }) => plain(id)).join(', ')}`,
    reasons(result, part, lengths),
    load(result, part, lengths),
    milled(result, part, lengths),
  );
}

/** Parts of one name that differ: their sizes under each other. */
function sizesTable(parts: readonly FittedPart[], lengths: Lengths): string {
  const size = (length: Rational | undefined) => (length ? lengths.of(length) : 'not fixed');
  const rows = parts.map((part) => {
    const alike = parts.filter((other) => other.same === part.same && other !== part).map(({ id }) => plain(id));
    return [plain(part.id), ...AXES.map((axis) => size(part.extent[axis])), alike.join(', ') || '–'];
  });
  return table([lengths.units, ...AXES.map(dimensionOf), 'same piece as'], rows);
}

function material(result: FitResult, part: FittedPart, lengths: Lengths): string {
  const known: Material | undefined = result.spec.shop.materials.get(part.material);
  if (known === undefined) return code(part.material);
  const { thickness, measured } = known;
  const sold = lengths.unit(thickness.value);
  return `${code(part.material)} (${measured === undefined ? sold : `${sold}, measured ${lengths.unit(measured.value)}`})`;
}

function cutSize({ cutSize: cut, bands, grain }: FittedPart, lengths: Lengths): string {
  const along = `grain along its ${dimensionOf(grain)}`;
  if (cut === undefined) return `Cut size open until every side is fixed; ${along}`;
  const banded = bands.map(({ side, band, thickness }) => `${side} with ${code(band)} (${lengths.unit(thickness)})`);
  const before = bands.length === 0 ? '' : ` before it is banded at ${banded.join(', ')}`;
  return `Cut ${lengths.product([cut.length, cut.width, cut.thickness])} (along the grain × across × thickness)${before}; ${along}`;
}

/** Each size and, a line each, what it is the sum of. */
function reasons(result: FitResult, part: FittedPart, lengths: Lengths): string {
  const across = thicknessAxis(part.attitude);
  const axes = [...AXES].sort((a, b) => Number(a === across) - Number(b === across));
  return block(axes.flatMap((axis) => sizeLines(result, part, axis, lengths)));
}

function sizeLines(result: FitResult, part: FittedPart, axis: Axis, lengths: Lengths): string[] {
  const length = part.extent[axis];
  if (length === undefined) return [`${dimensionOf(axis)}  not fixed`];
  const facts = result
    .reasons(part.id, axis)
    .map((reason) => ({ adds: sum(reason.adds, lengths), text: lengths.text(reasonWords(reason)) }));
  const total = lengths.of(length);
  const width = Math.max(total.length, ...facts.map(({ adds }) => adds.length));
  const label = Math.max(...AXES.map((one) => dimensionOf(one).length)) + 1;
  return [
    `${dimensionOf(axis).padEnd(label)} ${total.padStart(width)}`,
    ...facts.map(({ adds, text }) => `${' '.repeat(label)} ${adds.padStart(width)}  ${text}`),
  ];
}

function sum(adds: Rational, lengths: Lengths): string {
  if (adds.isZero()) return '';
  return `${adds.sign() < 0 ? '−' : '+'} ${lengths.of(adds.abs())}`;
}

/** How the part bends under what it carries, with its assumptions; nothing where no load is written. */
function load(result: FitResult, part: FittedPart, lengths: Lengths): string {
  const sag = sagOf(result.spec, result.fit, part.id);
  if (sag?.kind !== 'sag') return '';
  const rows = sagFacts(sag).map(({ name, value }) => [name, plain(lengths.text(value))]);
  return paragraphs(table(['under its load', ''], rows), LOAD_CAUTIONS.map((caution) => `*${caution}*`).join(' '));
}

/** One line for each joint half the part has. */
function milled(result: FitResult, part: FittedPart, lengths: Lengths): string {
  const lines = result.fit.joints.flatMap((joint) =>
    joint.halves
      .filter((half: Half) => half.part === part.id && half.slots.length > 0)
      .map((half) => {
        const mate = joint.entering === part.id ? joint.host : joint.entering;
        const slots = lengths.list(half.slots.map((slot) => slot.fromDatum));
        const what = joint.connector === undefined ? '' : ` for ${code(joint.connector.name)}`;
        return `- ${surfaceOn(half, part)}, to ${plain(mate)}${what}: ${slots} from its ${placeOn(half, part, half.datum)}`;
      }),
  );
  return lines.join('\n');
}
