import { SIDES } from '@dryfit/engine';
import { isPlane } from '../../generated/ast.js';
import { wordsOfRef } from '../../interpret/words.js';
import type { Cure, Fix } from '../fix.js';
import { nodeOf } from '../support/node.js';
import { instead } from '../support/place.js';
import { side } from './side.js';

/** Names a plane that is there in the place of a wall that no groove or notch has. */
export const plane: Fix = {
  name: 'plane',
  codes: ['no-such-plane'],
  most: 3,
  mayFollow: {
    ...side.mayFollow,
    'against-same-way': 'the plane is known now, and looks the way of the side that is to touch it',
    'flush-sides-differ': 'the plane is known now, and is another side',
  },
  *offer(about): Iterable<Cure> {
    const named = nodeOf(about, isPlane);
    if (!named?.of) return;
    const part = wordsOfRef(named.ref);
    const own = `${part}.${named.side}`;
    yield { title: `Write ${own}`, edits: [instead(named, own)] };
    for (const other of SIDES) {
      if (other === named.side) continue;
      const wall = `${part}.${named.of}.${other}`;
      yield { title: `Write ${wall}`, edits: [instead(named, wall)] };
    }
  },
};
