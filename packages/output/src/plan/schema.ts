import { type Static, Type } from '@sinclair/typebox';
import { Exact, exactly, oneOf, Side } from '../schema-parts.js';
import { FirstPieceSchema } from './first-piece-schema.js';
import { HeldSchema, HistorySchema } from './held-schema.js';
import { AlikeSchema, NeedsSchema, OtherwiseSchema, WaitSchema } from './order-schema.js';

const MINUTES = { minimum: 0 };

const OperationSchema = exactly(
  {
    pieces: Type.Array(
      exactly(
        {
          cabinet: Type.String({ description: 'Id of the cabinet, as in fit.json.' }),
          parts: Type.Array(Type.String()),
          count: Type.Integer({ minimum: 0, description: 'Pieces in all.' }),
        },
        'Parts of one cabinet that are milled alike.',
      ),
    ),
    count: Type.Integer({ minimum: 0, description: 'Pieces in all.' }),
    joint: Type.String({ description: 'A joint that the first of the parts is milled for, as in fit.json.' }),
    surface: Side,
    reference: exactly(
      {
        kind: oneOf(['face', 'end', 'toe', 'heel'], 'What the slots are measured from across the joint.'),
        side: Side,
        looks: oneOf(['up', 'down'], 'Which way it looks while the slotted surface is toward the operator.'),
      },
      'How the piece is held.',
    ),
    datum: Side,
    fence: oneOf(['left', 'right'], 'The fence the datum goes to.'),
    lines: Type.Array(Exact, { description: 'The lines that are used, from the fence.' }),
    stop: Type.Optional(
      exactly(
        { end: Side, distance: Exact, block: Type.Optional(Exact) },
        'The end that goes to the stop, how far from it the machine stands, and how thick a block lies between.',
      ),
    ),
    weight: Type.Optional(Type.Number({ minimum: 0, description: 'Of one piece, kg.' })),
    held: HeldSchema,
    needs: NeedsSchema,
    otherwise: Type.Optional(OtherwiseSchema),
  },
  'One group of slots, milled alike into pieces that are the same.',
);

const SpacerCountsSchema = Type.Array(
  exactly({ width: Exact, count: Type.Integer({ minimum: 1 }) }, 'Spacers of one width, and how many.'),
  { description: 'So many as stand at once, widest first.' },
);

const FenceSpacersSchema = exactly(
  {
    left: Type.Array(Exact),
    right: Type.Array(Exact),
    fences: oneOf(
      ['one', 'both', 'in turn'],
      'Pieces go to one fence; a stack stands at each; or the one stack goes from fence to fence.',
    ),
    needed: SpacerCountsSchema,
    lacks: Type.Optional(
      exactly(
        { pieces: SpacerCountsSchema, spares: Type.Integer({ minimum: 1 }) },
        'What a second stack lacks, and how many times fewer a piece would be laid down with it.',
      ),
    ),
  },
  'Of the spacers that the shop has, those at each fence.',
);

const SetUpSchema = exactly(
  {
    number: Type.Integer({ minimum: 1 }),
    machine: Type.String(),
    connector: Type.String(),
    depth: Exact,
    base: Exact,
    surface: oneOf(['edge', 'face', 'mitre'], 'What is milled into.'),
    pattern: Type.Optional(Type.String()),
    lines: Type.Array(Exact, { description: 'All the lines that are set, from the fence.' }),
    spacer: exactly(
      {
        kind: oneOf(['none', 'stock', 'cut', 'mark out'], 'How the spacer comes about.'),
        stack: Type.Array(Exact),
        width: Type.Optional(Exact),
      },
      'What stands between fence and part.',
    ),
    spacers: Type.Optional(FenceSpacersSchema),
    stop: Type.Optional(Exact),
    changes: Type.Array(oneOf(['machine', 'depth', 'base', 'pose', 'pattern', 'spacer', 'stop'], 'What is set anew.'), {
      description: 'From the set-up before; for the first, from an empty bench.',
    }),
    changeMinutes: Type.Number(MINUTES),
    millMinutes: Type.Number(MINUTES),
    loads: Type.Integer({ minimum: 0, description: 'Pieces laid down, those beside each other counting once.' }),
    slots: Type.Integer({ minimum: 0 }),
    operations: Type.Array(OperationSchema, { description: 'In their order: none before one it waits for.' }),
    waits: Type.Array(WaitSchema),
    again: Type.Optional(
      Type.Integer({ minimum: 1, description: 'Number of the last set-up before that had the same setting.' }),
    ),
    firstPiece: Type.Array(FirstPieceSchema, {
      description: 'At each fence, what to measure before the others are milled.',
    }),
    beside: Type.Array(
      exactly(
        {
          left: Type.Integer({ minimum: 0 }),
          right: Type.Integer({ minimum: 0 }),
          times: Type.Integer({ minimum: 1 }),
        },
        'Operations, counted from 0 in this set-up, whose pieces lie at both fences at once.',
      ),
    ),
    alike: Type.Array(AlikeSchema),
  },
  'Everything that is milled with one setting.',
);

const WaySchema = exactly(
  { setUps: Type.Integer({ minimum: 0 }), changeMinutes: Type.Number(MINUTES) },
  'For comparison.',
);

export const PlanSchema = Type.Object(
  {
    format: Type.Literal('dryfit-plan'),
    version: Type.Literal(1),
    title: Type.String(),
    errors: Type.Integer({ minimum: 0, description: 'Errors found; when there are any, nothing here is to be made.' }),
    changeMinutes: Type.Number(MINUTES),
    atLeastMinutes: Type.Number({ minimum: 0, description: 'No choice of settings and no order takes less changing.' }),
    proven: Type.Boolean({ description: 'The two are the same.' }),
    ranOut: Type.Boolean({ description: 'The time for the plan was up before more was proven.' }),
    millMinutes: Type.Number(MINUTES),
    spacers: SpacerCountsSchema,
    cabinetByCabinet: WaySchema,
    likeTogether: WaySchema,
    setUps: Type.Array(SetUpSchema, { description: 'In the order they are done.' }),
    histories: Type.Array(HistorySchema),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:plan:1',
    title: 'Plan',
    description: 'Set-ups of a job in their order. Lengths are in millimetres, times in minutes.',
    additionalProperties: false,
  },
);

export type PlanJson = Static<typeof PlanSchema>;
