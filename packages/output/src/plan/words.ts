import {
  type ChangeOver,
  type Operation,
  type Rational,
  type Setting,
  type SetUp,
  say,
  type Text,
} from '@dryfit/engine';
import { placeOn, surfaceName, surfaceOn } from '../print/surface.js';

/** "12 + 10 = 22", "none", "a block of 21.8", "mark out". */
export function spacerWords({ spacer }: Setting): Text {
  switch (spacer.kind) {
    case 'none':
      return ['none'];
    case 'cut':
      return say`a block of ${spacer.width}`;
    case 'mark out':
      return ['mark out'];
    case 'stock':
      return stackWords(spacer.stack);
  }
}

/** "12 + 10 = 22". */
export function stackWords(stack: readonly Rational[]): Text {
  const [first, ...others] = stack;
  if (first === undefined) return ['none'];
  if (others.length === 0) return [first];
  const sum = stack.reduce((total, piece) => total.add(piece));
  return [first, ...others.flatMap((piece): Text => [' + ', piece]), ' = ', sum];
}

/** What a set-up mills: slots for biscuits, mortises for tenons, holes for dowels. */
export function slotsWord({ operations }: Pick<SetUp, 'operations'>): string {
  const shapes = new Set(operations.map(({ joint }) => joint.connector?.shape));
  if (shapes.size !== 1) return 'slots';
  if (shapes.has('dowel')) return 'holes';
  return shapes.has('loose tenon') ? 'mortises' : 'slots';
}

/** "edge", "face", "mitre": the kind of surface that is slotted. */
export const surfaceWords = ({ pose }: Setting): string => (pose.surface === 'mitre' ? 'mitred end' : pose.surface);

export const patternWords = ({ pattern, lines }: Setting): Text =>
  pattern === undefined ? ['lines ', ...listed(lines)] : [pattern];

export const stopWords = ({ stop }: Setting): Text => (stop === undefined ? ['none'] : [stop]);

/** What a change-over is called on a sheet. */
export const CHANGE_WORDS: Readonly<Record<ChangeOver, string>> = {
  machine: 'machine',
  depth: 'depth',
  base: 'base to centre',
  pose: 'how the piece is held',
  pattern: 'pattern',
  spacer: 'spacer',
  stop: 'stop',
};

/** How the piece is held: which side looks where. */
export function heldWords({ part, half }: Operation, { pose }: Setting): string {
  const from = placeOn(part, half, half.from.side);
  if (half.role === 'mitre')
    return `mitred ${surfaceName(part, half.surface)} toward you, ${half.from.kind} (${from}) ${pose.reference}`;
  return `${surfaceOn(part, half)} toward you, ${from} ${pose.reference}`;
}

export const listed = (lengths: readonly Rational[]): Text =>
  lengths.flatMap((one, i): Text => (i === 0 ? [one] : [', ', one]));

/** Minutes to a tenth. */
export const minutes = (time: Rational): string => String(Number(time.toNumber().toFixed(1)));
