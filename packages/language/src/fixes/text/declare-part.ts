import { isPart, isPartLine } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { writeAfter } from '../support/braces.js';

const LATER = 'where the new part stands, and how it is held, is left to be written';

/** Declares a part that is named and not there, of the sheet that most parts of the cabinet are of. */
export const declarePart: Fix = {
  name: 'declare-part',
  codes: ['unknown-name'],
  most: 3,
  mayFollow: {
    'part-not-fixed': LATER,
    'part-unattached': LATER,
    'reference-missing': LATER,
    'datum-off-the-run': LATER,
    'faces-meet': LATER,
    'edges-cross': LATER,
    'no-contact': LATER,
    'no-connectors': LATER,
    'no-connector-lands': LATER,
    'does-not-close': LATER,
    'wrong-side': LATER,
    'size-not-positive': LATER,
    'parts-overlap': LATER,
    'shelf-needs-spacer': LATER,
    'spacer-not-in-stock': LATER,
    'spacer-absurd': LATER,
    'spacer-alias': LATER,
    'slot-near-edge': LATER,
    'fence-out-of-reach': LATER,
    'stop-out-of-range': LATER,
    'stop-not-on-step': LATER,
    'look-alike': LATER,
    'shelf-proud': LATER,
    'named-backwards': LATER,
    handed: LATER,
    'groove-shows': LATER,
    'ends-differ': LATER,
    'too-big-for-jig': LATER,
    'grain-across': LATER,
    'slots-collide': LATER,
  },
  *offer({ finding, cabinet }): Iterable<Cure> {
    const { type, name } = finding.data ?? {};
    const lines = cabinet?.items.filter(isPartLine) ?? [];
    const last = lines.at(-1);
    if (type !== 'Part' || typeof name !== 'string' || !last || !lines.every(({ parts }) => parts.every(isPart)))
      return;
    const materials = lines.map(({ material }) => material.$refText);
    const times = (material: string) => materials.filter((other) => other === material).length;
    const [material] = [...materials].sort((a, b) => times(b) - times(a));
    for (const attitude of ['level', 'upright', 'facing']) {
      const line = `part ${name} : ${attitude} of ${material}`;
      yield { title: `Declare "${line}"`, edits: [writeAfter(last, line)] };
    }
  },
};
