import type { Files } from '../../support/read.js';
import { TEXT } from './bench.js';
import { baseText, generator } from './spoil/bases.js';
import { ordersThatCross, strangerInJob } from './spoil/jobs.js';
import {
  calledLikeASide,
  declaredTwice,
  importedTwice,
  importForgotten,
  importMistaken,
  mistypedName,
  nothingComesOfIt,
  numberMistaken,
  partForgotten,
  type Slip,
  usedByNobody,
} from './spoil/names.js';
import {
  depthForgotten,
  figureMistaken,
  half,
  offsetsMiscounted,
  sideMistaken,
  unitMistaken,
  wallMissing,
  writtenTwice,
} from './spoil/statements.js';

/** Slips of the hand, by the fix that they are for. */
const slips: Readonly<Record<string, Slip>> = {
  'did-you-mean': mistypedName,
  'import-it': importForgotten,
  'import-path': importMistaken,
  'create-import': importMistaken,
  'declare-part': partForgotten,
  'part-number': numberMistaken,
  'other-name': declaredTwice,
  'one-import': importedTwice,
  plane: wallMissing,
  side: sideMistaken,
  unit: unitMistaken,
  whole: half,
  offsets: offsetsMiscounted,
  figure: figureMistaken,
  'cut-depth': depthForgotten,
  'remove-again': writtenTwice,
  'rename-part': calledLikeASide,
  'make-too': strangerInJob,
  'take-out-order': (text, random) => (random() < 0.5 ? strangerInJob(text, random) : ordersThatCross(text, random)),
  remove: nothingComesOfIt,
  'allow-text': (text, random) => (random() < 0.5 ? calledLikeASide(text, random) : usedByNobody(text, random)),
};

/** Sound texts, random ones and varied examples, each with a slip in it that a fix is for; without end. */
export function slipsFor(fix: string): Generator<Files> | undefined {
  const slip = slips[fix];
  return slip && everywhere(slip);
}

function* everywhere(slip: Slip): Generator<Files> {
  for (let seed = 1; ; seed++) {
    const slipped = slip(baseText(seed), generator(seed));
    if (slipped !== undefined) yield typeof slipped === 'string' ? { [TEXT]: slipped } : slipped;
  }
}
