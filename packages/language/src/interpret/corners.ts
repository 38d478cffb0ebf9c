import { axisOf, axisOfDimension, type CantStatement, type NotchStatement, type Side, say } from '@dryfit/engine';
import { settingMissing } from '../checks/setting-missing.js';
import { writtenTwice } from '../checks/written-twice.js';
import { wrongSide } from '../checks/wrong-side.js';
import type { CantLine, NotchLine } from '../generated/ast.js';
import { readWritten } from './measure.js';
import type { StatementReading } from './reading.js';
import { readSilences } from './silences.js';
import { wordsOfRefs } from './words.js';

type CornerLine = NotchLine | CantLine;

const WORDS = { NotchLine: 'notch', CantLine: 'cant' } as const;

export const idOfCorner = (node: CornerLine): string =>
  `${WORDS[node.$type]} ${wordsOfRefs(node.parts)} at ${node.first ?? ''} ${node.second ?? ''}`;

/** A block cut away at a corner: its two sizes run along the axes of the two sides. */
export function readNotch(node: NotchLine, reading: StatementReading): NotchStatement | undefined {
  const corner = readCorner(node, reading);
  return corner && { kind: 'notch', ...corner };
}

/** A corner cut straight off, by what is gone along each of the two sides. */
export function readCant(node: CantLine, reading: StatementReading): CantStatement | undefined {
  const corner = readCorner(node, reading);
  return corner && { kind: 'cant', ...corner };
}

type Corner = Omit<NotchStatement, 'kind'>;

function readCorner(node: CornerLine, reading: StatementReading): Corner | undefined {
  const { first, second } = node;
  const word = WORDS[node.$type];
  const parts = reading.parts.each(node.parts);
  const silences = readSilences(node.silences, reading);
  const source = reading.places.of(node);
  if (first === undefined || second === undefined) return undefined;
  if (axisOf(first) === axisOf(second)) {
    const message = say`${first} and ${second} do not meet in a corner`;
    const cure = say`Name two sides that meet, as in ${word === 'notch' ? 'front bottom' : 'front right'}.`;
    reading.report(wrongSide({ source: reading.places.property(node, 'second'), message, cure }));
    return undefined;
  }
  const legs = readLegs(node, [first, second], reading);
  if (node.legs.length < 2) {
    const message = say`a ${word} at ${first} ${second} needs its size along both`;
    const example = word === 'notch' ? '{ depth 75  height 100 }' : '{ width 300  depth 300 }';
    reading.report(settingMissing({ source, message, cure: say`Write both in its braces, as in ${example}.` }));
  }
  if (legs.length < 2 || parts.length === 0) return undefined;
  return { id: reading.statement, source, silences, parts, corner: [first, second], legs };
}

function readLegs(node: CornerLine, corner: readonly Side[], reading: StatementReading): Corner['legs'] {
  const word = WORDS[node.$type];
  const legs: Corner['legs'][number][] = [];
  for (const leg of node.legs) {
    const length = readWritten(leg.length, reading);
    const { dimension } = leg;
    if (dimension === undefined || !length) continue;
    const twice = legs.some((other) => other.dimension === dimension);
    const across = !corner.some((side) => axisOf(side) === axisOfDimension(dimension));
    if (twice) {
      const cure = say`Take one of the two out.`;
      reading.report(
        writtenTwice({ source: reading.places.of(leg), message: say`${dimension} is written twice`, cure }),
      );
    } else if (across) {
      const message = say`a ${word} at ${corner.join(' ')} goes through the whole ${dimension} of the part`;
      reading.report(wrongSide({ source: reading.places.of(leg), message, cure: say`Take ${dimension} out.` }));
    } else legs.push({ dimension, length });
  }
  return legs;
}
