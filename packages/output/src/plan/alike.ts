import { type Alike, type SetUp, say, type Text } from '@dryfit/engine';
import { exact } from '../fit-json/lengths.js';
import { listed } from './words.js';

const NTH = ['', '1st', '2nd', '3rd'];
const nth = (i: number): string => NTH[i] ?? `${i}th`;

/** Where the slots of pieces that lie side by side at one fence come to lie: "2nd piece: lines 390, 500". */
export function alikeLines({ lines }: Alike): readonly Text[] {
  return lines.slice(1).map((own, i) => [`${nth(i + 2)} piece: lines `, ...listed(own)]);
}

/** What is to be known of pieces that lie side by side at one fence, in one sentence after their name. */
export function alikeWords(alike: Alike): Text {
  const { operation, pieces, times, between, marked, adds } = alike;
  const often = times === 1 ? 'once' : `${times} times`;
  const apart: Text = between.length === 0 ? [] : [', with ', ...listed(between), ' between them'];
  const rows = alikeLines(alike).flatMap((row): Text => ['; ', ...row]);
  const more: Text = marked.length === 0 ? [] : ['; lines ', ...listed(marked), ' are marked as well'];
  const off: Text = adds
    ? say`; by the widths before it the last may lie ${adds.worstCase} further off, ${adds.rootSumSquare} by root sum square`
    : ['; how much the widths before it put the last off, the shop does not say'];
  return [
    `${pieces} at once ${often}, pressed together at the ${operation.half.hand} fence`,
    ...apart,
    ...rows,
    ...more,
    ...off,
  ];
}

/** The same as data; operations by their place in the set-up. */
export const alikeJson = ({ alike, operations }: SetUp) =>
  alike.map(({ operation, pieces, times, pitch, between, lines, marked, adds }) => ({
    operation: operations.indexOf(operation),
    pieces,
    times,
    pitch: exact(pitch),
    between: between.map(exact),
    lines: lines.map((own) => own.map(exact)),
    marked: marked.map(exact),
    ...(adds ? { adds: { worstCase: exact(adds.worstCase), rootSumSquare: exact(adds.rootSumSquare) } } : {}),
  }));
