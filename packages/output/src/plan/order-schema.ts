import { Type } from '@sinclair/typebox';
import { Exact, exactly, oneOf, Side } from '../schema-parts.js';

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

export const AlikeSchema = exactly(
  {
    operation: Type.Integer({
      minimum: 0,
      description: 'That of the piece at the fence, counted from 0 in this set-up.',
    }),
    shares: Type.Array(
      exactly(
        { operation: Type.Integer({ minimum: 0 }), pieces: Type.Integer({ minimum: 1 }) },
        'Pieces of one operation in a row.',
      ),
      { description: 'Whose pieces lie in one row, from the fence on.' },
    ),
    pieces: Type.Integer({ minimum: 2, description: 'How many lie on the bed at once.' }),
    times: Type.Integer({ minimum: 1 }),
    pitch: Exact,
    between: Type.Array(Exact, { description: 'Spacers between two of them.' }),
    lines: Type.Array(Type.Array(Exact), {
      description: 'Of each piece, from the fence; the first lies at the fence.',
    }),
    marked: Type.Array(Exact, { description: 'Lines that are marked beside those set.' }),
    adds: Type.Optional(
      exactly(
        { worstCase: Exact, rootSumSquare: Exact },
        'How much further off the slots of the last piece may lie by what is before it.',
      ),
    ),
  },
  'Pieces that are milled alike and lie side by side at one fence.',
);

export const OtherwiseSchema = exactly(
  {
    pose: Type.Boolean({ description: 'The reference looks the other way than it does in this shop as a rule.' }),
    datum: Type.Boolean({ description: 'Measured from the other edge along the run.' }),
    end: Type.Boolean({ description: 'Measured from the other end or face across the joint.' }),
    block: Type.Boolean({ description: 'Held off the stop by a block, so that the stop stands as for the other end.' }),
    adds: Type.Number({ minimum: 0, description: 'How much further off the slots may lie, mm, either way.' }),
  },
  'What is done otherwise than the joint asks; the slots are the same.',
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
