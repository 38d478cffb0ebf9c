import { isPart, isPartLine } from '../../generated/ast.js';
import type { Cure, Fix } from '../fix.js';
import { writeAfter } from '../support/braces.js';
import { hiddenUntilRead } from '../support/hidden.js';

const LATER = 'where the new part stands, and how it is held, is left to be written';

/** Declares a part that is named and not there, of the sheet that most parts of the cabinet are of. */
export const declarePart: Fix = {
  name: 'declare-part',
  codes: ['unknown-name'],
  most: 3,
  mayFollow: { ...hiddenUntilRead(LATER), 'wrong-side': LATER },
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
