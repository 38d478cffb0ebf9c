import type { Verb } from '@dryfit/engine';
import { type Fact, isConnectFact } from '../generated/ast.js';
import { CUT_IN, keyOf } from '../interpret/joint.js';
import { RANK } from './offer.js';
import type { Situation } from './situation.js';

/** Words that open a fact of a joint, by the grammar rule they stand in. */
const OPENS: Readonly<Record<string, readonly string[]>> = {
  FlushFact: ['flush'],
  CentredFact: ['centred'],
  OpeningsFact: ['openings'],
  ConnectFact: ['connect'],
  DatumFact: ['datum'],
  ReferenceFact: ['reference'],
  AcrossFact: ['at', 'centred'],
  CutFact: ['depth', 'width', 'clearance', 'lap', 'stopped'],
  SpacerFact: ['spacer'],
  LeaveOutFact: ['leave'],
  OuterFact: ['outer'],
  Silence: ['allow'],
};

/** Facts of which a joint with nothing in its way needs one. */
const NEEDED: Partial<Record<Verb, string>> = { groove: 'depth', house: 'depth', rebate: 'lap', mitre: 'outer' };

/** Facts about slots, which a joint without connectors has not. */
const OF_SLOTS = new Set(['DatumFact', 'ReferenceFact', 'AcrossFact', 'SpacerFact', 'LeaveOutFact']);

/**
 * How far up a word that opens a fact stands in the braces of a joint; undefined where the joint cannot have that
 * fact or has it already.
 */
export function factRank(word: string, rule: string, situation: Situation): number | undefined {
  const { head } = situation;
  if (head === undefined || !OPENS[rule]?.includes(word)) return RANK.word;
  const others = situation.facts;
  const said = new Set(others.map((fact) => saidBy(fact)));
  if (said.has(rule === 'CutFact' ? word : rule)) return undefined;
  if (rule === 'CutFact' && !CUT_IN[word as keyof typeof CUT_IN]?.includes(head.verb)) return undefined;
  if (rule === 'OuterFact' && head.verb !== 'mitre') return undefined;
  if (head.verb === 'rest' && (rule === 'ConnectFact' || OF_SLOTS.has(rule))) return undefined;
  if (NEEDED[head.verb] === word) return RANK.found;
  if (rule === 'Silence') return RANK.last;
  const holds = head.verb === 'butt' || head.verb === 'mitre' || others.some(isConnectFact);
  return OF_SLOTS.has(rule) && !holds ? RANK.unfit : rule === 'FlushFact' ? RANK.fits : RANK.word;
}

/** What a fact says once: the name of its rule, or of the figure it cuts by. */
function saidBy(fact: Fact): string | undefined {
  if (keyOf(fact) === undefined) return undefined;
  return fact.$type === 'CutFact' ? fact.cut : fact.$type;
}
