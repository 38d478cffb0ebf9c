import type { Trouble } from '@dryfit/engine';

const WORDS: Readonly<Record<Trouble, string>> = {
  'reference missing': 'no slots yet: say which face they are measured from, with `reference`',
  'reference not a face': 'no slots yet: the reference has to be a face of the part whose edge is milled',
  'datum off the run': 'no slots yet: the datum has to be a side the slots can be counted off from',
  'datum inside': 'no slots yet: a part reaches out beyond the datum plane',
  'faces meet': 'no slots: two faces meet, and connectors go into an edge',
  'edges cross': 'no slots: two edges of parts that stand differently meet',
  'no contact': 'no slots: the parts do not touch',
  'no connectors': 'no slots: neither the joint nor the cabinet names a connector',
  'mitre unequal': 'no slots: the two parts of a mitre have to be equally thick',
};

/** Why a joint has not been worked out, for people. */
export const troubleWords = (trouble: Trouble): string => WORDS[trouble];
