import { type FittedPart, formatLength, type ParameterValue, type Units } from '@dryfit/engine';
import { MILLIMETRES, nearest, readNumber } from '@dryfit/language';
import { cabinetId, type Item, labelCode } from '@dryfit/output';
import type { MadeJob } from './examination.js';
import { Misuse } from './io.js';

/** A piece of a job: a part of one of its cabinets. */
export interface PieceOfJob {
  /** Of its cabinet, in the job. */
  readonly index: number;
  readonly item: Item;
  readonly part: FittedPart;
  /** Which of the cabinets that are alike, from 1. */
  readonly copy: number;
}

/**
 * The piece that is meant by "lh of Periodicals(wide = 450)", "lh" where only one cabinet has it, or by what the code of its
 * label says. Parameters that are not named may be any.
 * @param number which of the cabinets that are alike it is of
 * @throws Misuse if there is none, or more than one
 */
export function pieceNamed(words: string, job: MadeJob, number: number | undefined, units: Units): PieceOfJob {
  const all = job.items.flatMap((item, index) =>
    item.count > 0 ? item.result.fit.parts.map((part) => ({ index, item, part })) : [],
  );
  const scanned = words.includes('/') ? byLabel(words, job, all) : undefined;
  if (scanned) return scanned;
  const { part: name, cabinet, given } = taken(words);
  const named = all.filter(({ part }) => part.id === name);
  if (named.length === 0) throw new Misuse(noPart(name, job, all));
  const own = named.filter(({ item: { result } }) => cabinet === undefined || result.fit.name === cabinet);
  const choices = (among: readonly Candidate[]) => listed(among, units);
  if (own.length === 0)
    throw new Misuse(`there is no ${name} of ${cabinet} in job ${job.name}; there is ${choices(named)}`);
  const meant = own.filter(({ item: { result } }) => given.every((one) => isGiven(one, result.fit.parameters, units)));
  const kinds = new Map(meant.map((one) => [cabinetId(one.item.result), one]));
  const [first, ...more] = kinds.values();
  if (!first) throw new Misuse(`there is no ${words} in job ${job.name}; there is ${choices(own)}`);
  if (more.length > 0)
    throw new Misuse(`job ${job.name} has several of ${words}; name one of ${choices([...kinds.values()])}`);
  const copy = number ?? 1;
  if (copy > first.item.count)
    throw new Misuse(`--number ${copy}: job ${job.name} makes ${first.item.count} of ${cabinetId(first.item.result)}`);
  return { ...first, copy };
}

type Candidate = Omit<PieceOfJob, 'copy'>;

/** Pieces by names that tell them apart: with every parameter that any of their cabinets is given. */
function listed(pieces: readonly Candidate[], units: Units): string {
  const telling = new Set(
    pieces.flatMap(({ item: { result } }) =>
      result.fit.parameters.filter(({ overridden }) => overridden).map(({ name }) => name),
    ),
  );
  const figure = ({ value, count }: ParameterValue): string => {
    if (count) return String(value);
    const { text, lost } = formatLength(value, { units });
    return lost.isZero() ? text : `${value} mm`;
  };
  const names = pieces.map(({ item: { result }, part }) => {
    const own = result.fit.parameters.filter(({ name }) => telling.has(name));
    const given = own.map((one) => `${one.name} = ${figure(one)}`).join(', ');
    return `"${part.id} of ${result.fit.name}${given === '' ? '' : `(${given})`}"`;
  });
  return [...new Set(names)].join(', ');
}

function byLabel(words: string, job: MadeJob, all: readonly Candidate[]): PieceOfJob | undefined {
  for (const { index, item, part } of all)
    for (let copy = 1; copy <= item.count; copy++)
      if (labelCode(job.name, item.result, copy, part.id) === words) return { index, item, part, copy };
  return undefined;
}

interface Given {
  readonly name: string;
  readonly figure: string;
}

/** "lh of Periodicals(wide = 450)" taken apart. */
function taken(words: string): {
  readonly part: string;
  readonly cabinet: string | undefined;
  readonly given: readonly Given[];
} {
  const [, part = words, cabinet, list] = /^\s*(.+?)\s+of\s+(.+?)\s*(?:\((.*)\))?\s*$/.exec(words) ?? [];
  const given = (list ?? '').split(',').flatMap((one): Given[] => {
    if (one.trim() === '') return [];
    const [name = '', figure, ...more] = one.split('=').map((side) => side.trim());
    if (name === '' || !figure || more.length > 0)
      throw new Misuse(`a parameter is written as in "lh of Periodicals(wide = 450)", not ${one.trim()}`);
    return [{ name, figure }];
  });
  return { part: part.trim().replace(/\s+/g, ' '), cabinet, given };
}

function isGiven({ name, figure }: Given, parameters: readonly ParameterValue[], units: Units): boolean {
  const own = parameters.find((one) => one.name === name);
  const { value, unit, unhyphened } = readNumber(figure);
  if (!own || !value || unhyphened !== undefined) return false;
  return own.value.equals(own.count ? value : value.mul(MILLIMETRES[unit ?? units]));
}

function noPart(name: string, { name: job }: MadeJob, all: readonly Candidate[]): string {
  const names = [...new Set(all.map(({ part }) => part.id))].sort();
  const meant = nearest(name, names);
  const instead = meant === undefined ? `; there is ${names.join(', ')}` : `; did you mean ${meant}?`;
  return `there is no part ${name} in job ${job}${instead}`;
}
