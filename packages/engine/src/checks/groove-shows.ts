import type { Box } from '../fit/fit.js';
import { say } from '../fit/text.js';
import { cut as cutBox, withoutAll } from '../geometry/boxes.js';
import { Rational } from '../number/rational.js';
import { highSide, isHigh, lowSide, type Side } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { alike, once } from './support/alike.js';
import { partNames } from './support/names.js';
import { type Recess, recesses } from './support/recesses.js';

/** Any part that lies against an end covers this much in front of it, mm. */
const SLIVER = Rational.of(1, 1000);

/** A groove, rebate or housing runs out at an end of its part that nothing covers. */
export const grooveShows: Check = {
  code: 'groove-shows',
  severity: 'warning',
  *run(context) {
    const open: Open[] = [];
    for (const recess of recesses(context)) open.push(...openEnds(context, recess));
    for (const group of alike(open, ({ recess, end }) => [recess.joint.id, recess.cut.kind, end])) {
      const [{ recess, end }] = group;
      const { joint, cut } = recess;
      const hosts = once(group.map((o) => o.recess.part.id));
      yield {
        message: say`the ${cut.kind} for ${partNames(context, joint.entering)} runs out of the ${end} of ${partNames(context, hosts)}, where no part covers it and it shows`,
        cure: say`Stop it short of the end, as in: stopped 10, cover the end with another part, or allow it if it is to be seen: allow groove-shows "why".`,
        source: joint.source,
        related: group.map((o) => ({
          message: say`the ${end} of ${o.recess.part.id} is open`,
          source: o.recess.part.source,
        })),
        about: { parts: hosts, statement: joint.id },
        data: { end },
      };
    }
  },
};

interface Open {
  readonly recess: Recess;
  readonly end: Side;
}

function* openEnds(context: CheckContext, recess: Recess): Generator<Open> {
  const { part, cut, joint } = recess;
  const { box } = part;
  const { run } = cut;
  if (!box) return;
  for (const end of [lowSide(run), highSide(run)]) {
    const at = isHigh(end) ? box.hi[run] : box.lo[run];
    const reaches = isHigh(end) ? cut.box.hi[run].ge(at) : cut.box.lo[run].le(at);
    if (!reaches || closedByItself(context, recess, end, at)) continue;
    const before = isHigh(end) ? cutBox(cut.box, run, at, at.add(SLIVER)) : cutBox(cut.box, run, at.sub(SLIVER), at);
    const others = context.fit.parts.filter((p) => p.id !== part.id && !joint.entering.includes(p.id));
    const covers = others.map((p) => (p.turn ? undefined : p.box)).filter((b): b is Box => b !== undefined);
    if (withoutAll(before, covers).length > 0) yield { recess, end };
  }
}

/** What is housed or rebated fits without play and fills the mouth where it comes flush; in a groove a panel has play. */
function closedByItself(context: CheckContext, { cut, joint }: Recess, end: Side, at: Rational): boolean {
  if (cut.kind === 'groove') return false;
  return joint.entering.some((id) => {
    const own = context.solved.at(id, end);
    return own !== undefined && (isHigh(end) ? own.ge(at) : own.le(at));
  });
}
