import { type StuckParts, stuckParts } from '../assembly/index.js';
import type { FittedJoint } from '../fit/fit.js';
import { list, say, type Text } from '../fit/text.js';
import { axisOf } from '../spec/sides.js';
import type { Check, CheckContext } from './check.js';
import { comingApart } from './support/coming-apart.js';
import { MOVES, partNames } from './support/names.js';

/** Parts whose joints close in ways that no order of putting them together allows. */
export const cannotBeAssembled: Check = {
  code: 'cannot-be-assembled',
  severity: 'error',
  *run(context) {
    for (const stuck of stuckParts(context.fit, comingApart(context))) {
      const joints = stuck.joints.flatMap((id) => context.joint(id) ?? []);
      const freeing = stuck.freeing.flatMap(({ joint }) => context.joint(joint) ?? []);
      const [at] = [...freeing, ...joints];
      if (!at) continue;
      const found = stuck.proven
        ? say`cannot be put together in any order`
        : say`can be put together in no order that was found`;
      yield {
        ...(stuck.proven ? {} : { severity: 'warning' }),
        message: say`${partNames(context, stuck.parts)} ${found}: ${ways(joints)}`,
        cure: cure(context, stuck),
        source: at.source,
        related: related(context, joints, at.statement),
        about: { parts: stuck.parts, joint: at.id, statement: at.statement },
        data: {
          loosen: stuck.freeing
            .filter(({ by }) => by === 'connectors')
            .map(({ joint }) => context.joint(joint)?.statement ?? ''),
        },
      };
    }
  },
};

/** Most joints that a message lists. */
const MOST = 5;

/** "top / lh closes left or right, back / lh to front or rear". */
function ways(joints: readonly FittedJoint[]): Text {
  const texts = joints.slice(0, MOST).map((joint) => say`${joint.id} ${wayOf(joint)}`);
  const left = joints.length - texts.length;
  return list(left > 0 ? [...texts, say`${left} more joints hold them as well`] : texts);
}

function wayOf({ verb, axis, hostSide, halves }: FittedJoint): string {
  const connected = halves.some(({ slots }) => slots.length > 0);
  if (verb === 'mitre') return connected ? 'closes square to its mitre only' : 'is mitred';
  if (connected) return `closes ${MOVES[axisOf(hostSide)]} only`;
  return verb === 'groove' || verb === 'house' || verb === 'rebate' ? `is let in ${MOVES[axis]}` : 'is in the way';
}

function cure(context: CheckContext, { freeing, parts }: StuckParts): Text {
  const [bare, open] = (['connectors', 'recess'] as const).map((way) =>
    freeing.filter(({ by }) => by === way).map(({ joint }) => joint),
  );
  const cures: Text[] = [];
  if (bare && bare.length > 0)
    cures.push(
      say`make ${list(bare.slice(0, MOST), ' or ')} without connectors (connect none "screwed"), so that it need not close one way only`,
    );
  if (open && open.length > 0)
    cures.push(
      say`leave the recess of ${list(open.slice(0, MOST), ' or ')} open at an end, so that the part can slide in last`,
    );
  if (cures.length === 0)
    cures.push(
      say`leave one of ${partNames(context, parts)} loose until the others are together, and fix it with screws`,
    );
  const [first = [], ...rest] = cures;
  return say`${capital(first)}${rest.flatMap((more) => say`; or ${more}`)}.`;
}

const capital = ([first, ...rest]: Text): Text =>
  typeof first === 'string' ? [first.charAt(0).toUpperCase() + first.slice(1), ...rest] : [first ?? '', ...rest];

/** Where the other statements that have to do with it stand, each once. */
function related(context: CheckContext, joints: readonly FittedJoint[], but: string) {
  const others = new Set(joints.map(({ statement }) => statement));
  others.delete(but);
  return [...others].slice(0, MOST).flatMap((id) => {
    const statement = context.statement(id);
    return statement ? [{ message: say`these close at the same time`, source: statement.source }] : [];
  });
}
