import { type Static, Type } from '@sinclair/typebox';
import { Approximate, Exact, exactly, oneOf, Place, Side } from '../schema-parts.js';

const Off = Type.Union([Exact, Approximate]);

const ContributionSchema = exactly(
  {
    name: Type.String({ description: 'What may be off, lengths in the units asked for.' }),
    origin: oneOf(
      [
        'thickness',
        'band',
        'written',
        'saw',
        'square',
        'mitre',
        'cuts',
        'machine',
        'fence',
        'spacer',
        'stop',
        'line',
        'cup',
        'dirt',
      ],
      'What kind of thing it is.',
    ),
    coefficient: Type.Number({ description: 'How much of its error the result takes on.' }),
    least: Type.Number({ description: 'What it adds at the worst, mm.' }),
    most: Type.Number(),
    share: Type.Number({ minimum: 0, maximum: 1, description: 'Its part of the root sum square, squared.' }),
    place: Type.Optional(Place),
  },
  'One thing that may be off, and what it has to do with a result.',
);

const TrialsSchema = exactly(
  {
    mean: Type.Number(),
    deviation: Type.Number({ minimum: 0, description: 'Standard deviation, mm.' }),
    least: Type.Number(),
    most: Type.Number(),
    beyond: Type.Optional(Type.Number({ minimum: 0, maximum: 1, description: 'Part of the trials beyond the limit.' })),
  },
  'What the trials gave, mm.',
);

export const ToleranceResultSchema = exactly(
  {
    id: Type.String({ description: 'Unique in its cabinet.' }),
    kind: oneOf(
      ['step', 'flush', 'place', 'gap', 'mitre opening', 'toes', 'heels', 'outside', 'opening', 'span', 'diagonals'],
      'What may be off.',
    ),
    joint: Type.Optional(Type.String()),
    side: Type.Optional(Side),
    through: Type.Optional(Type.Array(Type.String(), { description: 'The parts a distance is made up of.' })),
    planned: Type.Optional(Off),
    limit: Type.Optional(Exact),
    worst: exactly({ least: Off, most: Off }, 'Everything off at once.'),
    rootSumSquare: exactly({ middle: Off, half: Approximate }, 'About the middle, either way.'),
    contributions: Type.Array(ContributionSchema, { description: 'The largest first.' }),
    trials: Type.Optional(TrialsSchema),
  },
  'One thing that may be off, in mm from where it was planned.',
);

export const ToleranceSchema = Type.Object(
  {
    format: Type.Literal('dryfit-tolerance'),
    version: Type.Literal(1),
    samples: Type.Integer({ minimum: 0 }),
    seed: Type.Integer(),
    cabinets: Type.Array(
      exactly(
        {
          cabinet: Type.String({ description: 'Its name, with the parameters it has here.' }),
          reckoning: oneOf(['worst case', 'root sum square'], 'How errors are held against the limits.'),
          unsaid: Type.Array(Type.String(), { description: 'What the shop says nothing of; it counts as nothing.' }),
          results: Type.Array(ToleranceResultSchema),
          batch: Type.Optional(
            exactly(
              {
                measured: Type.Record(Type.String(), Exact),
                recut: Type.Array(
                  exactly(
                    {
                      part: Type.String(),
                      size: oneOf(['length', 'width'], 'Along the grain, across it.'),
                      from: Exact,
                      to: Exact,
                    },
                    'A sawn size that changes.',
                  ),
                ),
                reset: Type.Array(
                  exactly(
                    {
                      joint: Type.String(),
                      part: Type.String(),
                      what: oneOf(['stop', 'spacer', 'across', 'slot'], 'What is set otherwise.'),
                      from: Exact,
                      to: Exact,
                    },
                    'A setting that changes.',
                  ),
                ),
                cuts: Type.Array(
                  exactly(
                    { part: Type.String(), kind: Type.String(), joint: Type.Optional(Type.String()) },
                    'A cut that changes.',
                  ),
                ),
                asPlanned: Type.Array(
                  exactly({ id: Type.String(), by: Off }, 'A result that moves where everything is left as it was.'),
                ),
              },
              'What another batch of sheets does. The results are those of the batch.',
            ),
          ),
        },
        'One cabinet with its parameters.',
      ),
    ),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:tolerance:1',
    title: 'Tolerance',
    description: 'How far off cabinets may come, and from what.',
    additionalProperties: false,
  },
);

export type ToleranceJson = Static<typeof ToleranceSchema>;
export type ToleranceResultJson = Static<typeof ToleranceResultSchema>;
