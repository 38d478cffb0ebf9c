import { Type } from '@sinclair/typebox';
import { exactly, oneOf, Side } from '../schema-parts.js';

const OtherWorkSchema = Type.Union(
  [
    exactly({ kind: Type.Literal('mitre'), side: Side }, 'The end is sawn to its mitre.'),
    exactly({ kind: Type.Literal('cant') }, 'The corner is cut off.'),
    exactly(
      { kind: Type.Literal('recess'), cut: oneOf(['groove', 'rebate', 'housing'], 'What the slots are in.') },
      'The recess is cut.',
    ),
    exactly({ kind: Type.Literal('band'), side: Side, band: Type.String() }, 'The side is banded.'),
    exactly({ kind: Type.Literal('layers'), material: Type.String() }, 'The layers are glued up, and the part is cut.'),
  ],
  { description: 'Work that is not done on the jig.' },
);

export const NeedsSchema = exactly(
  { before: Type.Array(OtherWorkSchema), after: Type.Array(OtherWorkSchema) },
  'What must be done to the pieces before they are milled, and what only afterwards.',
);

export const WaitSchema = exactly(
  {
    asked: oneOf(['late', 'before'], 'How the job asks for it.'),
    operations: Type.Array(Type.Integer({ minimum: 0 }), { description: 'What waits, counted from 0 in this set-up.' }),
    after: Type.Array(
      exactly(
        { setUp: Type.Integer({ minimum: 1 }), operation: Type.Integer({ minimum: 0 }) },
        'An operation by the number of its set-up and its place in it.',
      ),
      { description: 'What is milled before; in this set-up or an earlier one.' },
    ),
  },
  'Operations that wait for others.',
);
