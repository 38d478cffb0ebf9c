import { type Bound, type FirstMeasure, firstPieces, Rational, type SetUp } from '@dryfit/engine';
import type { Static } from '@sinclair/typebox';
import type { Item } from '../batch.js';
import { approximate, exact, known } from '../fit-json/lengths.js';
import type { FirstPieceSchema } from './first-piece-schema.js';

type FirstPieceJson = Static<typeof FirstPieceSchema>;
type MeasureJson = FirstPieceJson['measures'][number];

/** What is measured on the first pieces of a set-up, as plan.json has it. */
export const firstPieceJson = (setUp: SetUp, items: readonly Item[]): FirstPieceJson[] =>
  firstPieces(setUp, items).map(({ hand, operation, measures, unsaid }) => ({
    fence: hand,
    operation: setUp.operations.indexOf(operation),
    measures: measures.map(measureJson),
    notWritten: [...unsaid],
  }));

function measureJson({ what, from, wanted, toWall, bounds }: FirstMeasure): MeasureJson {
  return known<MeasureJson>({
    what,
    from,
    wanted: exact(wanted),
    toWall: toWall && (toWall instanceof Rational ? exact(toWall) : approximate(toWall)),
    least: bounds.least && boundJson(bounds.least),
    most: bounds.most && boundJson(bounds.most),
  });
}

const boundJson = ({ at, by }: Bound) => ({ at: exact(at), by });
