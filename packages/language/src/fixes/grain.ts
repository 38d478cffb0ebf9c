import { say } from '@dryfit/engine';
import { GrammarUtils } from 'langium';
import { isPartLine } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { itemAt } from './support/place.js';

const EXTENTS = ['width', 'depth', 'height'] as const;

/** Lets the grain of parts run another way. */
export const grain: Fix = {
  name: 'grain',
  codes: ['grain-across', 'sheet-too-short'],
  most: 1,
  mayFollow: { 'look-alike': 'pieces are compared along their grain' },
  *offer(about): Iterable<Cure> {
    const line = itemAt(about, about.finding.source);
    if (!isPartLine(line)) return;
    for (const extent of wanted(about)) {
      const word = GrammarUtils.findNodeForProperty(line.$cstNode, 'grain');
      const [start, end] = word ? [word.offset, word.end] : [line.$cstNode?.end ?? 0, line.$cstNode?.end ?? 0];
      yield {
        title: titled(say`Let the grain run along the ${extent}: grain ${extent}`, about.unit),
        edits: [{ uri: about.document.uri.toString(), start, end, text: word ? extent : ` grain ${extent}` }],
        preferred: true,
      };
    }
  },
};

function wanted({ finding }: Case): readonly string[] {
  const given = finding.data?.grain;
  return typeof given === 'string' ? [given] : EXTENTS;
}
