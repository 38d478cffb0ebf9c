import {
  formatLength,
  formatMm,
  type Holding,
  holdingOf,
  inTurn,
  type LengthFormat,
  type Operation,
  type Orientation,
  opposite,
  orientationOf,
  type Rational,
  type SetUp,
  waitsWithin,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { hasFences, packerWords, shopOf, weightWords } from '../plan/holding.js';
import { orderOn } from '../plan/order.js';
import type { PlannedJob } from '../plan/tables.js';
import { printText } from '../print/length.js';
import { partNames } from '../print/order.js';
import { datumWords, placeOn, surfaceName, surfaceOn } from '../print/surface.js';
import { besideWords, Histories, pressWords } from './holding.js';

/** Pieces that are held alike in a set-up: one drawing stands for all of them. */
export interface Card {
  /** In the order in which they are milled, from 1; and how many there are. */
  readonly number: number;
  readonly all: number;
  readonly hand: 'left' | 'right';
  /** Whether a fence stands there; else the lines are marked out from the datum. */
  readonly hasFence: boolean;
  /** The first of them. */
  readonly operation: Operation;
  /** "rear edge": what goes against the fence; along a cant the end of it that the lines are marked out from. */
  readonly datum: string;
  /** "left end": what looks at the operator, where the machine goes in. */
  readonly toward: string;
  /** Where the reference looks, and what looks the other way: ["bottom face down", "top face up"]. */
  readonly lies: readonly [string, string];
  /** The end that the stop is set from; absent without a stop. */
  readonly stopEnd: string | undefined;
  readonly groups: readonly Group[];
  /** What is pressed where, and whether it is clamped flat. */
  readonly press: string;
  /** How the first of the pieces is marked. */
  readonly marks: Orientation;
  /** The lines that are used, where not all the lines set are. */
  readonly lines: readonly Rational[];
}

/** Pieces of one cabinet on a card. */
export interface Group {
  readonly cabinet: string;
  readonly parts: string;
  readonly count: number;
  /** The same pieces have been on an earlier card of this set-up. */
  readonly again: boolean;
  readonly weight: string;
  readonly packer: string;
  /** Which of them lie beside others. */
  readonly beside: string;
  /** Where the pieces come from, and where they go next. */
  readonly history: string;
}

/** The cards of a set-up, in the order its operations are done: left fence first, unless some of them wait for others. */
export function cardsOf(job: PlannedJob, setUp: SetUp, format: LengthFormat): readonly Card[] {
  const { setting } = setUp;
  const ordered = waitsWithin(setUp);
  const histories = new Histories(job, format);
  const cards = new Map<string, { card: Omit<Card, 'groups' | 'number' | 'all'>; groups: Group[] }>();
  for (const operation of inTurn(setUp)) {
    const { half, part } = operation;
    const holding = holdingOf(operation, setUp, shopOf(job));
    const reference = half.from.side;
    const looks = setting.pose.reference;
    const other = looks === 'up' ? 'down' : 'up';
    const lies: [string, string] = [
      `${placeOn(part, half, reference)} ${looks}`,
      // Across from a cant there is no side.
      half.turn
        ? `${surfaceName(part, opposite(half.surface))} away from you`
        : `${surfaceName(part, opposite(reference))} ${other}`,
    ];
    const card = {
      hand: half.hand,
      hasFence: !half.turn && hasFences(job),
      operation,
      datum: datumWords(part, half, half.datum),
      toward: half.role === 'mitre' ? `mitred ${surfaceName(part, half.surface)}` : surfaceOn(part, half),
      lies,
      stopEnd: setting.stop && half.stop ? surfaceName(part, half.stop.end) : undefined,
      lines: half.slots.map(({ fromZero }) => fromZero),
      press: pressWords(operation, holding, setUp, shopOf(job), format),
      marks: marksOf(job, operation),
    };
    const key = [
      card.hand,
      card.datum,
      card.toward,
      ...lies,
      card.stopEnd ?? '',
      String(half.stop?.block?.width ?? ''),
      card.press,
      markKey(card.marks),
      card.lines.join(' '),
      // What waits for other work does not join it on a card before it.
      ordered ? operation.number : '',
    ].join('; ');
    const kept = cards.get(key) ?? { card, groups: [] };
    kept.groups.push(...groupsOf(job, setUp, operation, holding, histories, format));
    cards.set(key, kept);
  }
  const seen = new Set<string>();
  const told = (group: Group): Group => {
    const key = `${group.cabinet}: ${group.parts}`;
    const again = seen.has(key);
    seen.add(key);
    return { ...group, again };
  };
  return [...cards.values()].map(
    ({ card, groups }, i): Card => ({ ...card, number: i + 1, all: cards.size, groups: groups.map(told) }),
  );
}

/** How the first of an operation's pieces is marked, as far as its cabinet tells. */
function marksOf({ items }: PlannedJob, { part, pieces: [first] }: Operation): Orientation {
  const fit = items[first?.item ?? 0]?.result.fit;
  return fit ? orientationOf(fit, part) : { faces: [], edges: [], alongCant: [] };
}

const markKey = ({ faces, edges }: Orientation): string => [...faces, ...edges].map(({ side }) => side).join(' ');

function groupsOf(
  job: PlannedJob,
  setUp: SetUp,
  operation: Operation,
  holding: Holding,
  histories: Histories,
  format: LengthFormat,
): Group[] {
  const order = orderOn(job, setUp, operation).map((words) => printText(words, format));
  const beside = [...order, besideWords(job, operation, setUp, format)].filter((words) => words !== '').join(' ');
  return operation.pieces.map(({ item, parts, count }, i) => {
    const made = job.items[item];
    const own = made?.result.fit.parts.filter(({ id }) => parts.includes(id)) ?? [];
    return {
      cabinet: made ? printText(cabinetLabel(made.result.fit), format) : '',
      parts: partNames(own),
      count,
      again: false,
      weight: weightWords(operation.weight, holding.people, format.units),
      packer: sentence(printText(packerWords(holding, operation.count), format)),
      // Told of the operation as a whole, and so once.
      beside: i === 0 ? beside : '',
      history: histories.words(setUp, operation, item, parts),
    };
  });
}

const sentence = (words: string): string => (words === '' ? '' : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`);

/** A length as large figures show it, without what rounding took away: that is told beside them. */
export const figure = (length: Rational, format: LengthFormat): string => formatLength(length, format).text;

/** What is to be set where a figure is rounded, in words; nothing where it is not. */
export function exactly(length: Rational, format: LengthFormat): string {
  if (formatLength(length, format).lost.isZero()) return '';
  return format.units === 'in'
    ? `set ${formatMm(length, { decimals: 3 }).text} mm: this is the nearest fraction`
    : `exactly ${formatMm(length, { decimals: 4 }).text}`;
}

export const figures = (lengths: readonly Rational[], format: LengthFormat): string =>
  lengths.map((length) => figure(length, format)).join(',  ');
