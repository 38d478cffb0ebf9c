import type { FittedJoint, Trouble } from '../../fit/fit.js';
import { say, type Text } from '../../fit/text.js';
import type { JointStatement, PartId } from '../../spec/spec.js';
import type { CheckContext } from '../check.js';
import { alike, once } from './alike.js';
import { partNames } from './names.js';

/** A joint statement that cannot be worked out, told once however many ends and like parts it has. */
export interface Troubled {
  /** The first of its joints. */
  readonly joint: FittedJoint;
  readonly written: JointStatement;
  readonly entering: readonly PartId[];
  readonly hosts: readonly PartId[];
}

/** The statements some of whose joints have this trouble. */
export function* troubled(context: CheckContext, trouble: Trouble): Generator<Troubled> {
  const found = context.fit.joints.filter((joint) => joint.trouble.includes(trouble));
  for (const group of alike(found, (joint) => [joint.statement])) {
    const [joint] = group;
    const written = context.statement(joint.statement);
    if (written?.kind !== 'joint') continue;
    yield {
      joint,
      written,
      entering: once(group.map((j) => j.entering)),
      hosts: once(group.map((j) => j.host)),
    };
  }
}

/** "shelf meets lh and rh", for the head of a message. */
export const meets = (context: CheckContext, { entering, hosts }: Troubled): Text =>
  say`${partNames(context, entering)} ${entering.length > 1 ? 'meet' : 'meets'} ${partNames(context, hosts)}`;

/** What every finding about a troubled statement is about. */
export const aboutTrouble = ({ joint, entering, hosts }: Troubled) => ({
  parts: [...entering, ...hosts],
  joint: joint.id,
  statement: joint.statement,
});
