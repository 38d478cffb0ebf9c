import { type Static, Type } from '@sinclair/typebox';
import { FindingSchema } from '../findings/schema.js';
import { Approximate, Dimension, Exact, exactly, oneOf, Place, Side } from '../schema-parts.js';

const SizeSchema = exactly(
  {
    length: Exact,
    reasons: Type.Array(
      exactly(
        {
          statement: Type.String(),
          text: Type.String(),
          adds: Exact,
          place: Type.Optional(Place),
        },
        'One fact the size rests on, and what it adds.',
      ),
      { description: 'Sum to the size; sorted by statement.' },
    ),
  },
  'A finished size and why it is what it is.',
);

const CutSchema = exactly(
  {
    kind: oneOf(['groove', 'rebate', 'housing', 'notch', 'bevel', 'cant'], 'What is cut.'),
    surface: Side,
    toe: Type.Optional(Side),
    angle: Type.Optional(Type.Number({ description: 'How far off square a bevel is, degrees; 45 if absent.' })),
    legs: Type.Optional(
      Type.Array(exactly({ side: Side, distance: Exact }, 'How far a cant goes in from a side of its corner.')),
    ),
    inFrom: Type.Optional(exactly({ side: Side, distance: Exact }, 'The side the near wall is measured from.')),
    width: Type.Optional(Exact),
    depth: Type.Optional(Exact),
    run: Type.Optional(
      exactly(
        { end: Side, from: Exact, to: Exact, through: Type.Boolean() },
        'Start and end, measured from the side named.',
      ),
    ),
  },
  'A cut that is not a slot.',
);

const TurnSchema = exactly(
  {
    origin: exactly({ x: Exact, y: Exact }, 'Where the origin of the frame lies in the cabinet.'),
    along: exactly({ x: Exact, y: Exact }, 'The way its x runs; the length is of no account. Its z is the cabinet’s.'),
  },
  'A frame turned about the upright, in which a turned part and what is milled for it are told.',
);

export const PartSchema = exactly(
  {
    id: Type.String(),
    kind: Type.String({ description: 'Name it was declared under.' }),
    index: Type.Optional(Type.Integer({ description: 'Its number among like parts.' })),
    piece: Type.String({
      description: 'Id of the first part that is the same piece; parts with one piece are interchangeable.',
    }),
    attitude: oneOf(['upright', 'facing', 'level'], 'Upright: thickness along x; facing: along y; level: along z.'),
    material: Type.String(),
    grain: Dimension,
    place: Type.Optional(Place),
    turn: Type.Optional(TurnSchema),
    span: Type.Optional(Approximate),
    planes: Type.Optional(
      exactly(
        { left: Exact, right: Exact, front: Exact, rear: Exact, bottom: Exact, top: Exact },
        'Coordinates of the finished sides: x to the right, y to the rear, z up; of a turned part in its own frame.',
      ),
    ),
    width: Type.Optional(SizeSchema),
    depth: Type.Optional(SizeSchema),
    height: Type.Optional(SizeSchema),
    cut: Type.Optional(
      exactly(
        { length: Exact, width: Exact, thickness: Exact },
        'Size at the saw, before banding: along the grain, across it, thickness.',
      ),
    ),
    bands: Type.Array(exactly({ side: Side, band: Type.String(), thickness: Exact }, 'A band glued on a side.')),
    cuts: Type.Array(CutSchema),
  },
  'A part of a cabinet.',
);

export type PartJson = Static<typeof PartSchema>;

const HalfSchema = exactly(
  {
    part: Type.String(),
    turn: Type.Optional(TurnSchema),
    surface: Side,
    role: oneOf(['edge', 'face', 'mitre'], 'What is milled into.'),
    datum: Side,
    hand: oneOf(['left', 'right'], 'The fence the datum goes to.'),
    setback: Exact,
    spacer: exactly(
      {
        kind: oneOf(['none', 'stock', 'cut', 'missing', 'mark out'], 'How the spacer comes about.'),
        width: Exact,
        stack: Type.Array(Exact, { description: 'Stock pieces, widest first; for "missing" the nearest stack.' }),
        off: Exact,
      },
      'What stands between fence and part; off is the stack less the width.',
    ),
    reference: exactly(
      {
        kind: oneOf(['face', 'end', 'toe', 'heel'], 'What the slots are measured from across the joint.'),
        side: Side,
        distance: Exact,
      },
      'Where the slots lie across the joint.',
    ),
    stop: Type.Optional(exactly({ end: Side, distance: Exact }, 'Where the stop stands.')),
    packer: Type.Optional(Exact),
    depth: Exact,
    slots: Type.Array(
      exactly(
        {
          id: Type.String(),
          number: Type.Integer({ minimum: 1 }),
          fromZero: Exact,
          fromDatum: Exact,
          centre: exactly(
            { x: Exact, y: Exact, z: Exact },
            'Middle of its mouth; for a mitre on the toe line. In the cabinet, or in the frame of a turned part.',
          ),
          length: Approximate,
        },
        'One slot, mortise or hole.',
      ),
      { description: 'In order of their distance from the datum.' },
    ),
  },
  'What is milled into one of the two parts of a joint.',
);

export const JointSchema = exactly(
  {
    id: Type.String(),
    statement: Type.String(),
    place: Type.Optional(Place),
    verb: oneOf(['butt', 'mitre', 'groove', 'rebate', 'house', 'rest'], 'The joint as written.'),
    meeting: oneOf(['edge to face', 'edge to edge', 'face to face', 'mitre'], 'How the parts meet.'),
    entering: exactly({ part: Type.String(), side: Side }, 'The part that enters and the side it enters with.'),
    host: exactly({ part: Type.String(), side: Side }, 'The part it enters and the side that receives it.'),
    run: Type.Optional(Dimension),
    contact: Type.Optional(
      exactly({ from: Exact, to: Exact }, 'Overlap of the touching sides along the run, as coordinates.'),
    ),
    connector: Type.Optional(Type.String()),
    machine: Type.Optional(Type.String()),
    pattern: Type.Optional(Type.String()),
    without: Type.Optional(Type.String({ description: 'Why there are no connectors.' })),
    datum: Type.Optional(Side),
    reference: Type.Optional(Side),
    zero: Type.Optional(Exact),
    lines: Type.Array(
      exactly(
        { fromZero: Exact, use: oneOf(['used', 'outside contact', 'skipped', 'left out'], 'What became of it.') },
        'A line of the layout.',
      ),
    ),
    halves: Type.Array(HalfSchema, { description: "The entering part's half first; empty when nothing is milled." }),
  },
  'Where two parts meet.',
);

export type JointJson = Static<typeof JointSchema>;

const CabinetSchema = exactly(
  {
    id: Type.String({
      description: 'Name and overridden parameters, lengths in mm: "Periodicals(deep=320, wide=450)".',
    }),
    name: Type.String(),
    count: Type.Integer({ minimum: 0, description: 'How many of it are made.' }),
    place: Type.Optional(Place),
    parameters: Type.Array(
      Type.Union([
        exactly({ name: Type.String(), overridden: Type.Boolean(), length: Exact }, 'A parameter that is a length.'),
        exactly(
          { name: Type.String(), overridden: Type.Boolean(), number: Type.String() },
          'A parameter that is a plain number.',
        ),
      ]),
    ),
    thickness: oneOf(['nominal', 'measured'], 'Which sheet thickness the sizes are worked from.'),
    milled: oneOf(['before banding', 'after banding'], 'When the edges are milled.'),
    outside: Type.Optional(exactly({ width: Exact, depth: Exact, height: Exact }, 'Outside size over all parts.')),
    parts: Type.Array(PartSchema, { description: 'By id.' }),
    joints: Type.Array(JointSchema, { description: 'By id.' }),
    connectors: Type.Array(
      exactly(
        { connector: Type.String(), each: Type.Integer(), needed: Type.Integer() },
        'Connectors in one cabinet, and in all of them.',
      ),
    ),
    allowed: Type.Array(FindingSchema, { description: 'What would have been found, had the file not allowed it.' }),
  },
  'A cabinet with one set of parameters.',
);

export type CabinetJson = Static<typeof CabinetSchema>;

export const FitSchema = Type.Object(
  {
    format: Type.Literal('dryfit-fit'),
    version: Type.Literal(1),
    title: Type.String(),
    kind: oneOf(['cabinet', 'job'], 'One cabinet, or the cabinets of a job.'),
    errors: Type.Integer({ minimum: 0, description: 'Errors found; when there are any, nothing here is to be made.' }),
    findings: Type.Array(FindingSchema, { description: 'What a check of the file says, in the order of the text.' }),
    cabinets: Type.Array(CabinetSchema, { description: 'By id.' }),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:fit:1',
    title: 'Fit',
    description: 'Sizes, slots, spacers and stops of cabinets. Lengths are in millimetres.',
    additionalProperties: false,
  },
);

export type FitJson = Static<typeof FitSchema>;
