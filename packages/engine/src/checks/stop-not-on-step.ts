import { list, say } from '../fit/text.js';
import { inRange, nearestStep } from '../joints/stops.js';
import { type Stop, stopsBy } from '../joints/uneven-ends.js';
import { isHigh, opposite } from '../spec/sides.js';
import type { Check } from './check.js';
import { changeData, changeThatMoves } from './support/change.js';
import { stopsOf, unevenEnds } from './support/stops.js';
import { rewrite } from './support/written.js';

/** A stop lies further from the nearest place the jig's stop can be set to than the shop lets a step be. */
export const stopNotOnStep: Check = {
  code: 'stop-not-on-step',
  severity: 'warning',
  *run(context) {
    const { jig, limits } = context.spec.shop;
    if (!jig?.stop?.step) return;
    const offStep = ({ at }: Stop): boolean => !at.isZero() && nearestStep(jig, at).sub(at).abs().gt(limits.step);
    // One stop and a block for the other end: the block's own stop is never set.
    const blocked = new Set(unevenEnds(context).flatMap(({ more, less }) => (offStep(more) ? [] : [less.half])));
    const off = stopsOf(context).filter((stop) => offStep(stop) && inRange(jig, stop.at) && !blocked.has(stop.half));
    for (const group of stopsBy(off, ({ joint, end, at }) => `${joint.statement}\n${end}\n${at}`)) {
      const [{ joint, half, end, at }] = group;
      const near = nearestStep(jig, at);
      const { planes } = context.solved.system;
      const edgePart = half.part === joint.host ? joint.entering : joint.host;
      const [a, b] = [planes.side(half.part, end), planes.side(edgePart, end)];
      // The stop is measured inward, so it grows with the high plane at a high end and against the low one at a low end.
      const change = changeThatMoves(context, isHigh(end) ? a : b, isHigh(end) ? b : a, near.sub(at));
      yield {
        message: say`the stop ${at} from the ${end} of ${list(group.map((stop) => stop.half.part))} is none of the places the stop of ${jig.name} has, one every ${jig.stop.step}: set to ${near}, the nearest, ${edgePart} comes ${near.sub(at).abs()} nearer to the ${near.gt(at) ? opposite(end) : end}`,
        cure: change
          ? say`In ${change.number.statement.id}, ${rewrite(change.number, change.by)}.`
          : say`Move ${edgePart} by ${near.sub(at).abs()}, so that the stop is ${near}.`,
        source: joint.source,
        related: change
          ? [{ message: say`this number moves the stop by as much`, source: change.number.written.source }]
          : [],
        about: { parts: group.map((stop) => stop.half.part), joint: joint.id, statement: joint.statement },
        data: { stop: at.toString(), nearest: near.toString(), ...(change && changeData(change)) },
      };
    }
  },
};
