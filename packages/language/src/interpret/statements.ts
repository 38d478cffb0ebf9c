import { axisOfDimension, type BandStatement, type DimensionStatement, type PlacingStatement } from '@dryfit/engine';
import { type BandLine, type DimensionLine, isOpeningsFact, isSideFact, type Placing } from '../generated/ast.js';
import { readCentred, readOpenings, readSideFact } from './facts.js';
import { readWritten } from './measure.js';
import { liesAlong, readPlane } from './plane.js';
import type { StatementReading } from './reading.js';
import { readSilences } from './silences.js';
import { wordsOfPlane, wordsOfRef, wordsOfRefs } from './words.js';

export function idOfDimension(node: DimensionLine): string {
  const { dimension, form } = node;
  if (form === 'of') return `${dimension} of ${wordsOfRefs(node.parts)}`;
  if (form === 'from') return `${dimension} from ${wordsOfPlane(node.from)} to ${wordsOfPlane(node.to)}`;
  return `${dimension} ${form ?? 'of'} ${wordsOfRef(node.low)} and ${wordsOfRef(node.high)}`;
}

export function readDimension(node: DimensionLine, reading: StatementReading): DimensionStatement | undefined {
  const { dimension } = node;
  if (dimension === undefined) return undefined;
  const length = readWritten(node.length, reading);
  const form = readForm(node, reading);
  const silences = readSilences(node.silences, reading);
  if (!length || !form) return undefined;
  return {
    kind: 'dimension',
    id: reading.statement,
    source: reading.places.of(node),
    silences,
    dimension,
    length,
    form,
  };
}

function readForm(node: DimensionLine, reading: StatementReading): DimensionStatement['form'] | undefined {
  if (node.form === 'of') {
    const parts = reading.parts.each(node.parts);
    return parts.length > 0 ? { kind: 'of', parts } : undefined;
  }
  if (node.form === 'from') {
    const axis = axisOfDimension(node.dimension);
    const [from, to] = [readPlane(node.from, reading), readPlane(node.to, reading)];
    if (!from || !to) return undefined;
    const fits = [from, to].map((plane) => liesAlong(plane, axis, `a ${node.dimension}`, reading));
    return fits.every(Boolean) ? { kind: 'from', from, to } : undefined;
  }
  const low = reading.parts.one(node.low);
  const high = reading.parts.one(node.high);
  if (node.form === undefined || low === undefined || high === undefined) return undefined;
  return { kind: node.form, low, high };
}

export function idOfPlacing({ ref, fact }: Placing): string {
  const part = wordsOfRef(ref);
  if (isSideFact(fact)) {
    const { relation } = fact;
    const toward = TOWARD[fact.toward ?? ''] ?? fact.toward;
    const words = relation === undefined ? toward : RELATION[relation];
    return `${part}.${fact.side} ${words ?? ''} ${wordsOfPlane(fact.at)}`;
  }
  if (isOpeningsFact(fact)) return `${part} openings between ${wordsOfPlane(fact.low)} and ${wordsOfPlane(fact.high)}`;
  return `${part} centred between ${wordsOfRef(fact?.low)} and ${wordsOfRef(fact?.high)}`;
}

const TOWARD: Readonly<Record<string, string>> = { infrontof: 'in front of', leftof: 'left of', rightof: 'right of' };
const RELATION = { flush: 'flush with', set: 'set back from', proud: 'proud of', against: 'against' } as const;

export function readPlacing(node: Placing, reading: StatementReading): PlacingStatement | undefined {
  const parts = reading.parts.all(node.ref);
  if (!parts || parts.length === 0 || !node.fact) return undefined;
  const fact =
    node.fact.$type === 'SideFact'
      ? readSideFact(node.fact, parts, reading)
      : node.fact.$type === 'OpeningsFact'
        ? readOpenings(node.fact, reading)
        : readCentred(node.fact, reading);
  const silences = readSilences(node.silences, reading);
  return fact && { kind: 'placing', id: reading.statement, source: reading.places.of(node), silences, parts, fact };
}

export const idOfBand = (node: BandLine): string =>
  `band ${node.sides.join(', ')} of ${wordsOfRefs(node.parts)} with ${node.band?.$refText ?? '…'}`;

export function readBandLine(node: BandLine, reading: StatementReading): BandStatement | undefined {
  const parts = reading.parts.each(node.parts);
  const silences = readSilences(node.silences, reading);
  const band = node.band?.ref?.name;
  const sides = [...new Set(node.sides)];
  if (band === undefined || sides.length === 0 || parts.length === 0) return undefined;
  return { kind: 'band', id: reading.statement, source: reading.places.of(node), silences, sides, parts, band };
}
