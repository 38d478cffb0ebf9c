import { isConnectFact } from '../generated/ast.js';
import type { Cure, Fix } from './fix.js';
import { writeInCabinet } from './support/braces.js';
import { jointOf, setFact } from './support/facts.js';
import { because, UNUSED } from './support/follow.js';

/** Names a connector and a pattern that the shop has, for the joint or for the whole cabinet. */
export const connectBy: Fix = {
  name: 'connect-by',
  codes: ['no-connectors', 'pair-too-short', 'no-connector-lands', 'joint-can-rotate'],
  most: 2,
  mayFollow: {
    ...UNUSED,
    ...because('a short joint has room for one line of the pattern only', 'joint-can-rotate'),
  },
  *offer(about): Iterable<Cure> {
    const joint = jointOf(about);
    const shop = about.result?.spec.shop;
    if (!joint || !shop || !about.cabinet) return;
    for (const { name } of shop.connectors.values()) {
      for (const pattern of shop.patterns.keys()) {
        const line = `connect ${name} by ${pattern}`;
        yield { title: `Hold it together here: ${line}`, edits: [setFact(joint, line, isConnectFact)] };
        if (about.finding.code === 'no-connectors' && !about.cabinet.items.some(isConnectFact))
          yield { title: `Hold the cabinet together: ${line}`, edits: [writeInCabinet(about.cabinet, line)] };
      }
    }
  },
};
