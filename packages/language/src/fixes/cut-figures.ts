import { Rational, say } from '@dryfit/engine';
import { type CutFact, isCutFact } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { jointOf, setFact, titled } from './support/facts.js';
import { decent, lengthIn, writtenAs } from './support/figures.js';

interface Figure {
  readonly cut: CutFact['cut'];
  readonly length: Rational;
}

/** Gives a groove, housing or rebate the width, depth, clearance or stop that suits. */
export const cutFigures: Fix = {
  name: 'cut-figures',
  codes: ['back-pinched', 'groove-bottoms-out', 'groove-shows', 'slot-breaks-through', 'wood-moves'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    if (!joint) return;
    for (const { cut, length } of figures(about)) {
      if (length.sign() <= 0) continue;
      const line = `${cut} ${writtenAs(length, about.unit)}`;
      const isSame = (fact: (typeof joint.facts)[number]) => isCutFact(fact) && fact.cut === cut;
      yield {
        title: titled(say`Make the ${WORDS[cut]} ${length}: ${line}`, about.unit),
        edits: [setFact(joint, line, isSame)],
        preferred: true,
      };
    }
  },
};

const WORDS: Record<CutFact['cut'], string> = {
  depth: 'depth',
  width: 'width',
  clearance: 'clearance',
  lap: 'lap',
  stopped: 'stop short of the end',
};

function* figures({ finding, unit }: Case): Iterable<Figure> {
  const { data } = finding;
  const [width, stray, most] = [lengthIn(data?.width), lengthIn(data?.stray), lengthIn(data?.most)];
  switch (finding.code) {
    case 'back-pinched':
      if (!width) return;
      yield { cut: 'width', length: tenth(width) };
      yield { cut: 'width', length: width };
      return;
    case 'groove-bottoms-out':
      if (stray) yield { cut: 'clearance', length: stray.add(Rational.of(1, 2)) };
      return;
    case 'wood-moves': {
      const [clearance, depth] = [lengthIn(data?.clearance), lengthIn(data?.depth)];
      if (clearance) yield { cut: 'clearance', length: decent(clearance, unit, 'more') };
      if (depth) yield { cut: 'depth', length: decent(depth, unit, 'more') };
      return;
    }
    case 'groove-shows':
      for (const short of [10, 20]) yield { cut: 'stopped', length: decent(Rational.of(short), unit, 'more') };
      return;
    default:
      if (!most) return;
      for (const cut of ['depth', 'lap'] as const) {
        yield { cut, length: decent(most, unit, 'less') };
        yield { cut, length: most };
      }
  }
}

/** Up to the next tenth of a millimetre. */
const tenth = (width: Rational): Rational => width.mul(Rational.of(10)).ceil().div(Rational.of(10));
