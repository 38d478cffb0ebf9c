import type { CabinetItem } from '../generated/ast.js';
import { isAt, type Situation } from './situation.js';

/** Words that open what a cabinet says once, by their rule. */
const IN_CABINET: Readonly<Record<string, readonly [word: string, type: CabinetItem['$type']]>> = {
  ConnectFact: ['connect', 'ConnectFact'],
  DatumFact: ['datum', 'DatumFact'],
  MilledLine: ['milled', 'MilledLine'],
  MoistureLine: ['moisture', 'MoistureLine'],
};

/** The same for a file. */
const IN_FILE: Readonly<Record<string, string>> = {
  Jig: 'jig',
  Pose: 'pose',
  Limits: 'limits',
  Tolerances: 'tolerances',
  Changes: 'changes',
  Glue: 'glue',
  Units: 'units',
};

/** True for a word that opens what its cabinet or its file says already, somewhere else. */
export function saidAlready(word: string, rule: string, situation: Situation): boolean {
  const { cabinet, entry, file, offset, inJoint } = situation;
  if (cabinet && !inJoint) {
    const [opens, type] = IN_CABINET[rule] ?? [];
    return word === opens && cabinet.items.some((item) => item.$type === type && !isAt(item, offset));
  }
  if (entry || IN_FILE[rule] !== word) return false;
  const all = rule === 'Units' ? file.units : file.entries.filter(({ $type }) => $type === rule);
  return all.some((node) => !isAt(node, offset));
}
