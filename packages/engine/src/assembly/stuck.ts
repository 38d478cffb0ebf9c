import { type Apart, stuckIn, takeApart } from './apart.js';
import type { Assembly, Link } from './assembly.js';

/** Items that no order puts together, and what about them it is. */
export interface Stuck {
  /** So few that without any one of them the others go together. */
  readonly members: readonly number[];
  readonly links: readonly Link[];
  /** Joints of which a single one, made without its connectors or with its recess open, would let them go together. */
  readonly freeing: readonly Freeing[];
  /** False where moves other than those tried might do. */
  readonly proven: boolean;
}

export interface Freeing {
  readonly link: Link;
  readonly by: 'connectors' | 'recess';
}

/** What of a stuck group holds it: the smallest group found by leaving items out, and what each of its joints does. */
export function whyStuck(assembly: Assembly, stuck: Extract<Apart, { kind: 'stuck' }>): Stuck {
  const members = smallest(assembly, stuck.members);
  const inside = new Set(members);
  const links = assembly.links.filter(({ entering, host }) => inside.has(entering) && inside.has(host));
  const freeing = links.length > MOST ? [] : links.flatMap((link) => freed(assembly, link, members));
  return { members, links, freeing, proven: stuck.proven };
}

/** Most joints that are tried one by one. */
const MOST = 24;

const goes = (assembly: Assembly, members: readonly number[]): boolean =>
  stuckIn(takeApart(assembly, members)).length === 0;

/** What, taken from one joint alone, lets the members go together; its connectors first. */
function freed(assembly: Assembly, link: Link, members: readonly number[]): readonly Freeing[] {
  const bonds = assembly.bonds.filter(({ joint }) => joint !== link.joint);
  if (bonds.length < assembly.bonds.length && goes({ ...assembly, bonds }, members))
    return [{ link, by: 'connectors' }];
  const open = link.letIn && goes({ ...assembly, bonds, passing: [link] }, members);
  return open ? [{ link, by: 'recess' }] : [];
}

/**
 * Leaves out runs of items, long ones first, as long as the rest cannot be put together; ends when no single one can
 * be left out (Zeller's delta debugging).
 */
function smallest(assembly: Assembly, all: readonly number[]): readonly number[] {
  let members = all;
  for (let run = Math.ceil(members.length / 2); run >= 1; ) {
    let found = false;
    for (let from = 0; from < members.length; from += run) {
      const rest = [...members.slice(0, from), ...members.slice(from + run)];
      const [stuck] = rest.length < 2 ? [] : stuckIn(takeApart(assembly, rest));
      if (!stuck) continue;
      members = stuck.members;
      found = true;
      break;
    }
    if (found) run = Math.min(run, Math.ceil(members.length / 2));
    else if (run === 1) break;
    else run = Math.ceil(run / 2);
  }
  return members;
}
