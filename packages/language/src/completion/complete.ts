import { Lengths } from '../hover/lengths.js';
import { wordLine } from '../hover/words.js';
import { unitOf } from '../interpret/units.js';
import { checkOffers } from './checks.js';
import { connectorOffers, machineOffers } from './connectors.js';
import { factRank } from './facts.js';
import { importOffers } from './imports.js';
import { orderedCabinetOffers, orderedPartOffers } from './job-orders.js';
import { argumentOffers, cabinetOffers, parameterOffers } from './names.js';
import { type Feature, type Offer, RANK } from './offer.js';
import { saidAlready } from './once.js';
import { partOffers } from './parts.js';
import { patternOffers } from './patterns.js';
import { referenceWords, towardFits } from './places.js';
import { hasCant, hasWall } from './planes.js';
import { legFits, settingRank } from './settings.js';
import { bandOffers, materialOffers } from './sheets.js';
import { sideOffers } from './sides.js';
import type { Situation } from './situation.js';
import { statementOffers } from './statements.js';

/** Of what the grammar takes at a place, what fits there; the best first. */
export function complete(features: readonly Feature[], situation: Situation): readonly Offer[] {
  const lengths = new Lengths(unitOf(situation.file));
  const offers = new Map<string, Offer>();
  const add = (offer: Offer) => void (offers.has(keyOf(offer)) || offers.set(keyOf(offer), offer));
  // The words for sides come together, so that their order can tell the likelier one.
  if (features.some(isSideWord)) for (const side of sideOffers(situation, (word) => wordLine(word, 'Side'))) add(side);
  const whole = beginsStatement(features);
  for (const feature of features) {
    if (isSideWord(feature)) continue;
    for (const offer of offersOf(feature, situation, lengths)) {
      const extent = feature.kind === 'word' && feature.rule === 'Extent' && offer.kind === 'statement';
      if (whole || !extent) add(offer);
    }
  }
  return [...offers.values()].sort((a, b) => a.rank - b.rank);
}

const keyOf = ({ kind, label }: Offer): string => `${kind} ${label}`;

const isSideWord = (feature: Feature): boolean => feature.kind === 'word' && feature.rule === 'Side';

/** True at the start of a statement of a cabinet: the word `width` also tells a notch's size and the way of a grain. */
const beginsStatement = (features: readonly Feature[]): boolean =>
  features.some((feature) => feature.kind === 'word' && feature.rule === 'Verb');

function offersOf(feature: Feature, situation: Situation, lengths: Lengths): readonly Offer[] {
  switch (feature.kind) {
    case 'check':
      return checkOffers(situation);
    case 'text':
      return feature.rule === 'Import' ? importOffers(situation, false) : [];
    case 'name':
      return namesOf(feature, situation, lengths);
    case 'word':
      return wordOffers(feature.word, feature.rule, situation);
  }
}

function namesOf({ type, rule }: Extract<Feature, { kind: 'name' }>, situation: Situation, lengths: Lengths): Offer[] {
  switch (type) {
    case 'Part':
      return situation.entry?.$type === 'Job' ? orderedPartOffers(situation) : partOffers(situation);
    case 'Parameter':
      return rule === 'Argument' ? argumentOffers(situation) : parameterOffers(situation);
    case 'Cabinet':
      return rule === 'PartsOf' ? orderedCabinetOffers(situation) : cabinetOffers(situation);
    case 'Connector':
      return connectorOffers(situation, lengths);
    case 'Pattern':
      return patternOffers(situation, lengths);
    case 'Material':
      return materialOffers(situation, lengths);
    case 'Band':
      return bandOffers(situation, lengths);
    case 'Machine':
      return machineOffers(situation, lengths);
    default:
      return [];
  }
}

function wordOffers(word: string, rule: string, situation: Situation): readonly Offer[] {
  if (!/\p{L}/u.test(word)) return [];
  const rank = rankOf(word, rule, situation);
  if (rank === undefined) return [];
  const offer: Offer = { label: word, kind: 'word', rank, documentation: wordLine(word, rule) };
  return [
    offer,
    ...statementOffers(word, rule, situation).map((whole) => ({ ...whole, rank: Math.min(whole.rank, rank) })),
  ];
}

/** How far up a word stands; undefined where it does not fit. */
function rankOf(word: string, rule: string, situation: Situation): number | undefined {
  if (word === 'groove' || word === 'notch') {
    if (['Plane', 'PlaneOrPart', 'PlaneOrCant'].includes(rule)) return hasWall(word, situation) ? RANK.also : undefined;
  }
  // What a part stands on may get its cant further down.
  if (word === 'cant' && rule === 'Cant') return RANK.fits;
  if (word === 'cant' && rule === 'PlaneOrCant') return hasCant(situation) ? RANK.also : undefined;
  if (rule === 'ReferenceFace') return referenceWords(situation).includes(word) ? RANK.fits : undefined;
  if (rule === 'Toward') return towardFits(word, situation) ? RANK.fits : undefined;
  if (rule === 'Extent' && situation.notch) return legFits(word, situation) ? RANK.fits : undefined;
  if (rule === 'ConnectFact' && word === 'none') return RANK.also;
  if (saidAlready(word, rule, situation)) return undefined;
  if (situation.inJoint) return factRank(word, rule, situation);
  return settingRank(word, rule, situation);
}
