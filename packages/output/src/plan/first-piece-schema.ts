import { Type } from '@sinclair/typebox';
import { Approximate, Exact, exactly, oneOf, Side } from '../schema-parts.js';

const BoundSchema = exactly(
  {
    at: Exact,
    by: oneOf(
      ['step', 'held', 'closing', 'skin', 'connector'],
      'Why: half of the step that is let pass; what the shop says its bench holds; room for the connector; what has to be left under the slot; the connector has to go in.',
    ),
  },
  'To the middle of the slot, or of the slot itself.',
);

export const FirstPieceSchema = exactly(
  {
    fence: oneOf(['left', 'right'], 'The fence the piece goes to.'),
    operation: Type.Integer({ minimum: 0, description: 'Its operation, counted from 0 in this set-up.' }),
    measures: Type.Array(
      exactly(
        {
          what: oneOf(
            ['across', 'first', 'last', 'only', 'depth', 'width', 'length'],
            'From the reference to the slots; from the datum to the nearest, the furthest or the only one; of a slot.',
          ),
          from: Type.Optional(Side),
          wanted: Exact,
          toWall: Type.Optional(
            Type.Union([Exact, Approximate], {
              description: 'From the middle of the slot to each of its walls (across) or ends (along).',
            }),
          ),
          least: Type.Optional(BoundSchema),
          most: Type.Optional(BoundSchema),
        },
        'One thing to measure.',
      ),
    ),
    notWritten: Type.Array(Type.String(), {
      description: 'What the shop has not written, without which there is no bound where one would be.',
    }),
  },
  'What to measure on the first piece at a fence.',
);
