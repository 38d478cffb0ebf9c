import { type Static, Type } from '@sinclair/typebox';
import { Exact, exactly } from '../schema-parts.js';

const FoundSchema = exactly(
  { value: Exact, within: Exact },
  'A length found by measuring: the truth lies no further from value than within.',
);

const MovedSchema = exactly(
  { joint: Type.String(), part: Type.String(), from: Exact, to: Exact },
  'Slots of one half of a joint: how far they lie from what they are measured from.',
);

export const CalibrationSchema = Type.Object(
  {
    format: Type.Literal('dryfit-calibration'),
    version: Type.Literal(1),
    machine: Type.String(),
    described: Type.Optional(Type.String({ description: 'File and line of the machine.' })),
    set: Type.Optional(Exact),
    measuredWithin: Exact,
    base: Type.Optional(FoundSchema),
    width: Type.Optional(FoundSchema),
    depth: Type.Optional(
      exactly(
        {
          connector: Type.String(),
          closes: Type.Boolean({ description: 'The test joint closes, and so tells no depth.' }),
          deeper: Type.Optional(FoundSchema),
          short: Type.Optional(Exact),
        },
        'How much deeper than written the machine plunges, and what both halves then lack of the connector.',
      ),
    ),
    stop: Type.Optional(
      exactly(
        {
          jig: Type.String(),
          described: Type.Optional(Type.String({ description: 'File and line of the jig.' })),
          set: Exact,
          farther: FoundSchema,
          cabinets: Type.Array(
            exactly(
              {
                cabinet: Type.String(),
                slots: Type.Array(MovedSchema),
                askew: Type.Array(
                  exactly(
                    { part: Type.String(), by: Exact },
                    'A part of which one joint is moved otherwise than another.',
                  ),
                ),
              },
              'What is milled elsewhere against the stop as it stands.',
            ),
          ),
        },
        'How much farther from the end than set the stop stands; below zero: nearer.',
      ),
    ),
    write: Type.Array(Type.String(), { description: 'Figures as the shop file should have them.' }),
    cabinets: Type.Array(
      exactly(
        {
          cabinet: Type.String(),
          slots: Type.Array(MovedSchema),
          found: Type.Array(Type.String(), { description: 'Checks that find something with the corrected base.' }),
          cured: Type.Array(Type.String()),
        },
        'What the corrected base moves in a cabinet.',
      ),
    ),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:calibration:1',
    title: 'Calibration',
    description: 'What a test joint tells of a machine. Lengths are in millimetres.',
    additionalProperties: false,
  },
);

export type CalibrationJson = Static<typeof CalibrationSchema>;
