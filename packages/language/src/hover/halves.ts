import type { FittedJoint, FittedPart, Half, PartId, Rational, Spacer } from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { plain, table } from './markdown.js';
import { placeOn, referenceName, surfaceName, surfaceOn } from './surface.js';

type Parts = ReadonlyMap<PartId, FittedPart>;
/** A cell: what differs between like joints, and the words that follow it. */
type Cell = readonly [value: string, words?: string];
type Row = readonly [name: string, cell: (half: Half, part: FittedPart | undefined) => Cell];

/**
 * What is milled for like joints: a column for each half, a row for each thing the bench measures or sets. Where
 * like joints differ, a cell has their figures in turn. A shop without a jig marks out and has nothing to set.
 */
export function halvesTable(joints: readonly FittedJoint[], parts: Parts, lengths: Lengths, jig: boolean): string {
  const [first] = joints;
  const columns = (first?.halves ?? []).map((_, index) =>
    joints.flatMap(({ halves }) => halves.slice(index, index + 1)),
  );
  const rows = (jig ? [...MEASURED, ...SET] : MEASURED).map((row) => row(lengths));
  const cells = rows
    .map(([name, cell]) => [
      name,
      ...columns.map((halves) => inTurn(halves.map((half) => cell(half, parts.get(half.part))))),
    ])
    .filter(([, ...found]) => found.some((cell) => cell !== ''));
  const head = columns.map((halves) => [...new Set(halves.map(({ part }) => part))].map(plain).join('; '));
  return table(
    [lengths.units, ...head],
    cells.map((row) => row.map((cell) => cell || '–')),
  );
}

const MEASURED: readonly ((lengths: Lengths) => Row)[] = [
  () => ['mill into', (half, part) => [`${half.role === 'mitre' ? 'mitre at its ' : ''}${surfaceOn(half, part)}`]],
  (lengths) => ['slots', ({ slots }) => [lengths.list(slots.map((slot) => slot.fromDatum)) || 'none']],
  () => ['from its', (half, part) => [placeOn(half, part, half.datum)]],
  (lengths) => ['across', (half, part) => [lengths.of(half.across), `from ${referenceName(half, part)}`]],
  (lengths) => ['depth', ({ depth }) => [lengths.of(depth)]],
];

const SET: readonly ((lengths: Lengths) => Row)[] = [
  (lengths) => ['spacer', ({ spacer }) => [spacerWords(spacer, lengths)]],
  (lengths) => [
    'stop',
    ({ stop }, part) => (stop ? [lengths.of(stop.at), `from its ${surfaceName(part, stop.end)}`] : ['']),
  ],
  () => [
    'fence',
    ({ datum, hand, turn }, part) => [turn ? 'none: mark out' : `${surfaceName(part, datum)} at the ${hand} fence`],
  ],
  (lengths) => ['packer', ({ packer }) => [packer ? lengths.of(packer) : '']],
];

/** One text where all agree: `290; 540; 790 from its bottom end`. */
function inTurn(cells: readonly Cell[]): string {
  const values = new Set(cells.map(([value]) => value));
  const words = new Set(cells.map(([, after = '']) => after));
  if (words.size > 1) return cells.map((cell) => cell.join(' ').trim()).join('; ');
  const figures = values.size === 1 ? [...values] : cells.map(([value]) => value);
  return `${figures.join('; ')} ${[...words][0] ?? ''}`.trim();
}

/** `none`, `22 = 12 + 10`, `22: cut a block`. */
export function spacerWords(spacer: Spacer, lengths: Lengths): string {
  const width = lengths.of(spacer.width);
  const stack = spacer.stack.map((piece) => lengths.of(piece));
  const off = offWords(spacer.off, lengths);
  switch (spacer.kind) {
    case 'none':
      return 'none';
    case 'stock':
      return stack.length === 1 && off === '' ? width : `${width} = ${stack.join(' + ')}${off}`;
    case 'cut':
      return `${width}: cut a block`;
    case 'missing':
      return stack.length === 0
        ? `${width}: not in stock`
        : `${width}: not in stock, nearest ${stack.join(' + ')}${off}`;
    case 'mark out':
      return `${width}: mark out`;
  }
}

function offWords(off: Rational, lengths: Lengths): string {
  if (off.isZero()) return '';
  return `, ${lengths.of(off.abs())} too ${off.sign() > 0 ? 'wide' : 'narrow'}`;
}
