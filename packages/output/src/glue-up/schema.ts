import { type Static, Type } from '@sinclair/typebox';
import { exactly } from '../schema-parts.js';

const Names = Type.Array(Type.String());

const Way = Type.Array(Type.Number(), {
  minItems: 3,
  maxItems: 3,
  description: 'A direction along x (to the right), y (to the rear) and z (up); its length is of no account.',
});

const StepSchema = exactly(
  {
    number: Type.Integer({ minimum: 1 }),
    words: Type.String({ description: 'What is done, for people.' }),
    onto: Type.Array(Type.String(), { description: 'Parts that are there already; none where parts meet half way.' }),
    coming: Type.Array(
      exactly(
        {
          parts: Names,
          legs: Type.Array(exactly({ way: Way, mm: Type.Optional(Type.Number()) }, 'A straight piece of its move.'), {
            description: 'How it comes, the last piece of the move last.',
          }),
        },
        'Parts that come as one piece.',
      ),
    ),
    joints: Type.Array(Type.String(), { description: 'Ids of the joints that close in this step.' }),
    together: Type.Array(Names, { description: 'Joints that close only at the same time, list by list.' }),
    allMove: Type.Boolean({ description: 'Whether the parts move each its own way at the same time.' }),
    connectors: Type.Array(
      exactly({ connector: Type.String(), count: Type.Integer({ minimum: 1 }) }, 'How many of it.'),
    ),
    clamps: Type.Array(exactly({ along: Way, count: Type.Integer({ minimum: 1 }) }, 'How many, and how they pull.')),
  },
  'One step, which is left to set before the next.',
);

/** Format of `dryfit glue-up --json`. */
export const GlueUpSchema = Type.Object(
  {
    format: Type.Literal('dryfit-glue-up'),
    version: Type.Literal(1),
    cabinets: Type.Array(
      exactly(
        {
          cabinet: Type.String({ description: 'Its name, and its parameters where these are not as written.' }),
          steps: Type.Array(StepSchema),
          stuck: Type.Array(
            exactly(
              { parts: Names, joints: Names, proven: Type.Boolean() },
              'Parts that no order puts together; taken as one piece in the steps.',
            ),
          ),
          loose: Type.Array(Type.String(), { description: 'Parts that only rest in place and go in last.' }),
          unplaced: Type.Array(Type.String(), { description: 'Parts whose place is not fixed.' }),
        },
        'A cabinet as it is glued up.',
      ),
    ),
  },
  { additionalProperties: false, title: 'Glue-up', description: 'In what order cabinets are glued up.' },
);

export type GlueUpJson = Static<typeof GlueUpSchema>;
