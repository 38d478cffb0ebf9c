import {
  formatLength,
  formatMm,
  type LengthFormat,
  type Operation,
  opposite,
  type Rational,
  type SetUp,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import type { PlannedJob } from '../plan/tables.js';
import { printText } from '../print/length.js';
import { partNames } from '../print/order.js';
import { placeOn, surfaceName, surfaceOn } from '../print/surface.js';

/** Pieces that are held alike in a set-up: one drawing stands for all of them. */
export interface Card {
  readonly hand: 'left' | 'right';
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
  readonly packer: Rational | undefined;
}

/** The cards of a set-up: left fence first, in the order of its operations. */
export function cardsOf(job: PlannedJob, { operations, setting }: SetUp, format: LengthFormat): readonly Card[] {
  const cards = new Map<string, { card: Omit<Card, 'groups'>; groups: Group[] }>();
  for (const operation of operations) {
    const { half, part } = operation;
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
      operation,
      datum: placeOn(part, half, half.datum),
      toward: half.role === 'mitre' ? `mitred ${surfaceName(part, half.surface)}` : surfaceOn(part, half),
      lies,
      stopEnd: setting.stop && half.stop ? surfaceName(part, half.stop.end) : undefined,
      lines: half.slots.map(({ fromZero }) => fromZero),
    };
    const key = [card.hand, card.datum, card.toward, ...lies, card.stopEnd ?? '', card.lines.join(' ')].join('; ');
    const kept = cards.get(key) ?? { card, groups: [] };
    kept.groups.push(...groupsOf(job, operation, format));
    cards.set(key, kept);
  }
  const seen = new Set<string>();
  const told = (group: Group): Group => {
    const key = `${group.cabinet}: ${group.parts}`;
    const again = seen.has(key);
    seen.add(key);
    return { ...group, again };
  };
  return [...cards.values()]
    .sort((a, b) => (a.card.hand === b.card.hand ? 0 : a.card.hand === 'left' ? -1 : 1))
    .map(({ card, groups }): Card => ({ ...card, groups: groups.map(told) }));
}

function groupsOf(job: PlannedJob, { pieces, weight, half }: Operation, format: LengthFormat): Group[] {
  return pieces.map(({ item, parts, count }) => {
    const made = job.items[item];
    const own = made?.result.fit.parts.filter(({ id }) => parts.includes(id)) ?? [];
    return {
      cabinet: made ? printText(cabinetLabel(made.result.fit), format) : '',
      parts: partNames(own),
      count,
      again: false,
      weight: weight ? `${Number(weight.toNumber().toFixed(1))} kg` : '',
      packer: half.packer,
    };
  });
}

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
