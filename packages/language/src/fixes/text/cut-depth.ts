import { Rational } from '@dryfit/engine';
import { isJoint } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { writeInto } from '../support/braces.js';
import { decent, writtenAs } from '../support/figures.js';
import { nodeOf } from '../support/node.js';
import { side } from './side.js';

/** Shares of the thickness of the part that is cut, in the order they are tried. */
const SHARES = [Rational.of(1, 2), Rational.of(1, 3), Rational.of(1, 4)];

/** Writes how deep a groove or housing is, or by how much a rebate laps: half the thickness that is cut, or less. */
export const cutDepth: Fix = {
  name: 'cut-depth',
  codes: ['fact-missing'],
  most: 2,
  mayFollow: side.mayFollow,
  *offer(about): Iterable<Cure> {
    const joint = nodeOf(about, isJoint);
    if (!joint) return;
    const word = joint.verb === 'rebate' ? 'lap' : 'depth';
    const hosts = [
      ...joint.between.flatMap(({ low, high }) => [low?.ref, high?.ref]),
      ...joint.to.map(({ ref }) => ref),
    ];
    const names = hosts.map((ref) => ref?.part?.ref?.name);
    const { parts = [], shop } = about.result?.spec ?? {};
    const thicknesses = parts
      .filter(({ kind }) => names.includes(kind))
      .flatMap(({ material }) => shop?.materials.get(material)?.thickness.value ?? []);
    const [first, ...others] = thicknesses;
    if (!first) return;
    const least = others.reduce((a, b) => (a.le(b) ? a : b), first);
    for (const share of SHARES) {
      const figure = writtenAs(decent(least.mul(share), about.unit, 'less'), about.unit);
      yield { title: `Write ${word} ${figure}`, edits: [writeInto(joint, `${word} ${figure}`)] };
    }
  },
};
