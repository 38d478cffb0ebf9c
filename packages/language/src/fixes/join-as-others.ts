import { highSide, lowSide, thicknessAxis, thirdAxis } from '@dryfit/engine';
import type { Cure, Fix } from './fix.js';
import { writeInCabinet } from './support/braces.js';
import { ONCE_FIXED } from './support/follow.js';
import { factsBetween, jointInto, looseSides, partCalled } from './support/loose.js';

/** Joins a part that no joint names as another that stands the same way is joined. */
export const joinAsOthers: Fix = {
  name: 'join-as-others',
  codes: ['part-not-fixed'],
  most: 2,
  mayFollow: ONCE_FIXED,
  *offer(about): Iterable<Cure> {
    const { cabinet, result } = about;
    const loose = looseSides(about);
    const own = loose[0] && partCalled(about, loose[0].part);
    if (!cabinet || !own || !result || loose.some(({ part }) => part !== own.id) || jointInto(about, own.id)) return;
    const axis = thicknessAxis(own.attitude);
    for (const statement of result.spec.statements) {
      if (statement.kind !== 'joint' || statement.verb !== 'butt' || statement.between.length !== 1) continue;
      const [pair] = statement.between;
      const host = pair && partCalled(about, pair.low.part);
      const third = host && thirdAxis(axis, thicknessAxis(host.attitude));
      if (!third || !statement.entering.some((id) => partCalled(about, id)?.attitude === own.attitude)) continue;
      const joint = `butt ${own.id} between ${pair.low.part} and ${pair.high.part}`;
      for (const place of factsBetween(about, own.id, axis)) {
        const facts = [place, `flush ${highSide(third)}, ${lowSide(third)}`, `reference ${lowSide(axis)}`];
        const line = `${joint} { ${facts.join('  ')} }`;
        yield { title: `Join it as others are: ${line}`, edits: [writeInCabinet(cabinet, line)] };
      }
    }
  },
};
