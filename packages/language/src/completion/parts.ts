import { axisOf, type Side } from '@dryfit/engine';
import type { Named } from './head.js';
import { isSide, readHead } from './head.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';
import { type Standing, thicknessOf } from './standing.js';

/** How a part fits: not at all, or so far up in the list and for this reason. */
type Verdict = { readonly rank: number; readonly detail?: string | undefined } | undefined;

/** Numbers of like parts that are offered one by one. */
const MOST_NUMBERS = 12;

/** The parts that can be named where a part is wanted. */
export function partOffers(situation: Situation): Offer[] {
  const judge = judgeOf(situation);
  const offers: Offer[] = [];
  for (const part of situation.parts.values()) {
    const verdict = judge.judge(part);
    if (verdict === undefined) continue;
    const names = { type: 'Part', name: part.name };
    const detail = verdict.detail ?? what(part);
    offers.push({ label: part.name, kind: 'part', rank: verdict.rank, detail, names });
    if (!judge.one) continue;
    for (const number of numbersOf(part))
      offers.push({ label: `${part.name} ${number}`, kind: 'part', rank: verdict.rank, detail, names });
  }
  // A text that nothing fits is better helped with everything than with nothing.
  return offers.length > 0 ? offers : [...situation.parts.values()].map(anyway);
}

const anyway = (part: Standing): Offer => ({
  label: part.name,
  kind: 'part',
  rank: RANK.unfit,
  detail: what(part),
  names: { type: 'Part', name: part.name },
});

function what({ attitude, material, numbers }: Standing): string {
  const many = numbers === undefined ? '' : ` ${numbers[0] ?? '…'} to ${numbers[1] ?? '…'}`;
  return `${attitude ?? ''} part${many === '' ? '' : 's'}${many}${material ? ` of ${material}` : ''}`.trim();
}

function numbersOf({ numbers }: Standing): readonly number[] {
  const [first, last] = numbers ?? [];
  if (first === undefined || last === undefined) return [];
  return Array.from({ length: Math.max(0, Math.min(last - first + 1, MOST_NUMBERS)) }, (_, i) => first + i);
}

interface Judge {
  judge(part: Standing): Verdict;
  /** One part is meant, not all of a name. */
  readonly one: boolean;
}

const fits: Verdict = { rank: RANK.fits };

function judgeOf(situation: Situation): Judge {
  const { tail, begun, inJoint, head } = situation;
  const own = head?.entering.map(({ name }) => name) ?? [];
  const others = (part: Standing): Verdict => (own.includes(part.name) ? undefined : fits);
  if (inJoint) return { judge: centredWith(situation) ?? openedBy(situation, own) ?? others, one: true };
  const joint = readHead(begun);
  if (joint) return judgeOfHead(joint, situation);
  // A part that stands along a cant: what it stands on lies level.
  if (/ of \S+ on$/.test(tail))
    return {
      judge: (part) => (part.attitude === 'level' ? { rank: part.canted ? RANK.fits : RANK.also } : undefined),
      one: true,
    };
  const list = /^(notch|cant|band .* of|(?:width|depth|height) .* of) (.*)$/.exec(`${tail} `);
  if (list) return { judge: (part) => listed(part, list[1] ?? '', list[2] ?? '', situation), one: false };
  if (/^(width|depth|height) .*(over|between|and)$/.test(tail))
    return { judge: (part) => spanned(part, situation), one: true };
  if (begun.length === 0) return { judge: () => ({ rank: RANK.word + 1 }), one: false };
  const placed = begun[0];
  return { judge: centredWith(situation) ?? ((part) => (part.name === placed ? undefined : fits)), one: true };
}

function judgeOfHead(joint: NonNullable<ReturnType<typeof readHead>>, { begun, parts, start }: Situation): Judge {
  const last = begun.at(-1);
  const entering = joint.entering.map(({ name }) => name);
  if (
    joint.pairs.length === 0 &&
    joint.to.length === 0 &&
    !['between', 'to'].includes(begun.length > 2 ? (last ?? '') : '')
  ) {
    const judge = (part: Standing): Verdict => {
      if (entering.includes(part.name)) return undefined;
      // What no other joint holds yet is what one looks for.
      const held = part.hosts || part.enters.some((from) => from !== start);
      return { rank: held ? RANK.also : RANK.fits };
    };
    return { judge, one: false };
  }
  const used = [...entering, ...joint.pairs.flat().map(({ name }) => name)];
  const own = parts.get(entering[0] ?? '');
  const low = last === 'and' ? joint.pairs.at(-1)?.[0] : undefined;
  return {
    judge: (part) => (used.includes(part.name) ? undefined : host(part, own, low, parts, last === 'to')),
    one: true,
  };
}

/** Hosts in a pair stand as opposites: the same way, unless a side is named. */
function host(
  part: Standing,
  own: Standing | undefined,
  low: Named | undefined,
  parts: ReadonlyMap<string, Standing>,
  single: boolean,
): Verdict {
  const other = low && parts.get(low.name);
  if (other && low.side === undefined && part.attitude !== other.attitude) return undefined;
  if (!single && low?.side === undefined && own?.attitude !== undefined && own.attitude === part.attitude)
    return { rank: RANK.unfit, detail: `stands as ${own.name} does: name the side that is met` };
  return fits;
}

/** `centred between a and b`: two that stand the same way. */
function centredWith({ tail, parts }: Situation): ((part: Standing) => Verdict) | undefined {
  const match = /(?:^| )centred between(?: (\S+)(?: \d+)? and)?$/.exec(tail);
  if (!match) return undefined;
  const low = parts.get(match[1] ?? '');
  return (part) => (low !== undefined && (part === low || part.attitude !== low.attitude) ? undefined : fits);
}

/** `openings equal between base.top and …`: first the parts that lie as those between them do. */
function openedBy({ tail, parts }: Situation, own: readonly string[]): ((part: Standing) => Verdict) | undefined {
  if (!/(?:^| )openings equal (?:to .*)?between(?: .* and)?$/.test(tail)) return undefined;
  const attitude = parts.get(own[0] ?? '')?.attitude;
  return (part) => (own.includes(part.name) ? undefined : { rank: part.attitude === attitude ? RANK.fits : RANK.also });
}

/** `width 600 over a and b`: two parts across whose faces, or else their sides, it is measured. */
function spanned(part: Standing, { tail, parts }: Situation): Verdict {
  const low = /(?:over|between) (\S+)(?: \d+)? and$/.exec(tail)?.[1];
  if (part.name === low) return undefined;
  const axis = { width: 'x', depth: 'y', height: 'z' }[tail.split(' ')[0] ?? ''];
  const other = parts.get(low ?? '');
  const across = thicknessOf(part) === axis && (other === undefined || other.attitude === part.attitude);
  return { rank: across ? RANK.fits : RANK.also };
}

function listed(part: Standing, verb: string, list: string, situation: Situation): Verdict {
  if (list.split(/ , | /).includes(part.name)) return undefined;
  const face = verb.startsWith('band')
    ? verb.split(' ').find((word): word is Side => isSide(word) && axisOf(word) === thicknessOf(part))
    : undefined;
  if (face) return { rank: RANK.unfit, detail: `${face} is a face of ${part.name}, not an edge` };
  return situation.parts.size > 0 ? fits : undefined;
}
