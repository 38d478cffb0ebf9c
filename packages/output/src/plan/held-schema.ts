import { type Static, Type } from '@sinclair/typebox';
import { Exact, exactly, oneOf, Side } from '../schema-parts.js';

/** How the pieces of an operation are held. */
export const HeldSchema = exactly(
  {
    by: oneOf(['beam', 'jig clamps', 'loose clamps'], 'What clamps the piece.'),
    along: exactly(
      { side: Side, to: oneOf(['fence', 'spacer', 'marks'], 'What the datum is pressed against.') },
      'Along the line from fence to fence.',
    ),
    across: exactly(
      {
        side: Side,
        to: oneOf(
          ['bed', 'bench', 'stop', 'machine', 'marks'],
          'What the reference is pressed against: the jig’s `bed`, a `bench` without a jig, a `stop`; `machine` is the machine’s base, `marks` a straight edge clamped on.',
        ),
      },
      'Across that line.',
    ),
    flat: Type.Optional(
      exactly(
        {
          because: oneOf(['cup', 'thin'], 'The shop’s cup, or the proportions of the piece.'),
          cup: Type.Optional(Exact),
        },
        'The piece must be clamped flat.',
      ),
    ),
    packers: Type.Array(
      exactly(
        {
          thickness: Exact,
          where: oneOf(['far end', 'on the piece'], 'Under the far end of the beam, or between beam and piece.'),
          pieces: Type.Integer({ minimum: 1, description: 'For so many of the pieces.' }),
        },
        'A block that keeps the beam level.',
      ),
    ),
    machine: oneOf(['slides', 'lifted'], 'How the machine goes from line to line.'),
    people: Type.Optional(Type.Integer({ minimum: 1, maximum: 2, description: 'How many lift the piece.' })),
  },
  'How the piece is held.',
);

/** What becomes of pieces in the course of a plan. */
export const HistorySchema = exactly(
  {
    pieces: Type.Array(
      exactly(
        { cabinet: Type.String(), parts: Type.Array(Type.String()) },
        'Parts of one cabinet that go the same way.',
      ),
    ),
    steps: Type.Array(
      exactly(
        {
          setUp: Type.Integer({ minimum: 1 }),
          operation: Type.Integer({ minimum: 0, description: 'Counted from 0 in that set-up.' }),
          turns: Type.Array(
            exactly(
              {
                about: oneOf(
                  ['right', 'up', 'toward'],
                  'A direction of the operator’s, which does not turn with the piece.',
                ),
                degrees: Type.Number({ exclusiveMinimum: -180, maximum: 180 }),
              },
              'By the right-hand rule.',
            ),
            {
              maxItems: 2,
              description:
                'From how the piece lay in the step before, one after the other; a mitred piece as if sawn square.',
            },
          ),
          fenceChanges: Type.Boolean({ description: 'The datum goes to the other fence than in the step before.' }),
        },
        'In the order they are done.',
      ),
    ),
  },
  'What becomes of pieces from set-up to set-up.',
);

export type HeldJson = Static<typeof HeldSchema>;
export type HistoryJson = Static<typeof HistorySchema>;
