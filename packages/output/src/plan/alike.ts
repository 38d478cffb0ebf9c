import { type Alike, type Operation, type SetUp, say, type Text } from '@dryfit/engine';
import { exact } from '../fit-json/lengths.js';
import { listed } from './words.js';

const NTH = ['', '1st', '2nd', '3rd'];
const nth = (i: number): string => NTH[i] ?? `${i}th`;

/** Where the slots of pieces that lie side by side at one fence come to lie: "2nd piece: lines 390, 500". */
export function alikeLines({ lines }: Alike): readonly Text[] {
  return lines.slice(1).map((own, i) => [`${nth(i + 2)} piece: lines `, ...listed(own)]);
}

/**
 * What is to be known of pieces that lie side by side at one fence, in one sentence after their name.
 * @param named what an operation is called beside others
 */
export function alikeWords(alike: Alike, named: (operation: Operation) => Text): Text {
  const { operation, shares, pieces, times, between, marked, adds } = alike;
  const whose: Text =
    shares.length < 2
      ? []
      : [
          ' (from the fence ',
          ...shares.flatMap((one, i): Text => [i === 0 ? '' : ', then ', `${one.pieces} × `, ...named(one.operation)]),
          ')',
        ];
  const often = times === 1 ? '' : ` ${times} times`;
  const apart: Text = between.length === 0 ? [] : [', with ', ...listed(between), ' between them'];
  const rows = alikeLines(alike).flatMap((row): Text => ['; ', ...row]);
  const more: Text = marked.length === 0 ? [] : ['; lines ', ...listed(marked), ' are marked as well'];
  const off: Text = adds
    ? say`; by the widths before it the last may lie ${adds.worstCase} further off, ${adds.rootSumSquare} by root sum square`
    : ['; how much the widths before it put the last off, the shop does not say'];
  return [
    `${pieces} at once${often}`,
    ...whose,
    `, pressed together at the ${operation.half.hand} fence`,
    ...apart,
    ...rows,
    ...more,
    ...off,
  ];
}

/** The same as data; operations by their place in the set-up. */
export const alikeJson = ({ alike, operations }: SetUp) =>
  alike.map(({ operation, shares, pieces, times, pitch, between, lines, marked, adds }) => ({
    operation: operations.indexOf(operation),
    shares: shares.map((one) => ({ operation: operations.indexOf(one.operation), pieces: one.pieces })),
    pieces,
    times,
    pitch: exact(pitch),
    between: between.map(exact),
    lines: lines.map((own) => own.map(exact)),
    marked: marked.map(exact),
    ...(adds ? { adds: { worstCase: exact(adds.worstCase), rootSumSquare: exact(adds.rootSumSquare) } } : {}),
  }));
