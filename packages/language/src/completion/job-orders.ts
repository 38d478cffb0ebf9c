import { type Cabinet, isCabinet, isJob } from '../generated/ast.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';
import { choices, type Piece } from './snippet.js';
import { standingsOf } from './standing.js';
import type { Statements } from './statement.js';

/** What a job says of the order of its work. */
export const ORDER_STATEMENTS: Statements = {
  'LateLine late': [['late … of …', (at) => ['late ', ...somePart(at)]]],
  'MillLine mill': [['mill … before …', (at) => ['mill ', ...somePart(at), ' before ', ...somePart(at)]]],
};

function somePart(at: Situation): readonly Piece[] {
  const [cabinet] = cabinetsOf(at);
  return [
    choices([...standingsOf(cabinet).keys()], 'part'),
    ' of ',
    choices(
      cabinetsOf(at).map(({ name }) => name),
      'cabinet',
    ),
  ] as readonly Piece[];
}

/** The cabinets that the job at hand makes, each once. */
export function cabinetsOf({ entry }: Situation): readonly Cabinet[] {
  const made = isJob(entry) ? entry.lines.flatMap(({ cabinet }) => cabinet?.ref ?? []) : [];
  return [...new Set(made)].filter((cabinet) => isCabinet(cabinet) && cabinet.name !== undefined);
}

/** Parts named since the last `late`, `mill` or `before`. */
const named = ({ tail }: Situation): readonly string[] =>
  (/(?:^|.* )(?:late|mill|before) (.*)$/.exec(`${tail} `)?.[1] ?? '')
    .replace(/ of .*$/, '')
    .split(/ , | /)
    .filter((word) => /^\p{L}/u.test(word));

/** Parts that may come late, or be milled before others: those of all cabinets of the job, since which is told behind. */
export function orderedPartOffers(at: Situation): Offer[] {
  const written = new Set(named(at));
  const parts = new Map<string, string[]>();
  for (const cabinet of cabinetsOf(at)) {
    const own = standingsOf(cabinet);
    // A list goes on with parts of a cabinet that has those before.
    if (![...written].every((name) => own.has(name))) continue;
    for (const name of own.keys()) if (!written.has(name)) parts.set(name, [...(parts.get(name) ?? []), cabinet.name]);
  }
  return [...parts].map(([name, of]) => ({
    label: name,
    kind: 'part',
    rank: RANK.fits,
    detail: `part of ${of.join(', ')}`,
  }));
}

/** Cabinets that the parts before may be of: those that have them all. */
export function orderedCabinetOffers(at: Situation): Offer[] {
  const written = named(at);
  return cabinetsOf(at).map((cabinet) => {
    const own = standingsOf(cabinet);
    const missing = written.find((name) => !own.has(name));
    return {
      label: cabinet.name,
      kind: 'cabinet',
      rank: missing === undefined ? RANK.fits : RANK.unfit,
      detail: missing === undefined ? 'made in this job' : `has no ${missing}`,
      names: { type: 'Cabinet', name: cabinet.name },
    };
  });
}
