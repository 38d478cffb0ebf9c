import { type Static, Type } from '@sinclair/typebox';
import { exactly, oneOf, Place } from '../schema-parts.js';

export const FindingSchema = exactly(
  {
    code: Type.String({ description: 'Name of the check, such as "slot-near-edge".' }),
    severity: oneOf(
      ['error', 'warning', 'info'],
      'error: cannot be made as written; warning: unwise; info: worth knowing.',
    ),
    message: Type.String({ description: 'What is wrong and why, lengths in the units asked for.' }),
    cure: Type.String({ description: 'What would cure it; empty when nothing is proposed.' }),
    cabinets: Type.Array(Type.String(), { description: 'The cabinets it is found in, with their parameters.' }),
    place: Type.Optional(Place),
    related: Type.Array(
      exactly({ message: Type.String(), place: Type.Optional(Place) }, 'Another place that has to do with it.'),
    ),
    parts: Type.Array(Type.String(), { description: 'Ids of the parts it is about.' }),
    joint: Type.Optional(Type.String()),
    slots: Type.Array(Type.String()),
    data: Type.Optional(
      Type.Record(Type.String(), Type.Union([Type.String(), Type.Array(Type.String())]), {
        description: 'Exact figures behind the message, lengths in mm as fractions.',
      }),
    ),
  },
  'Something that is wrong, unwise or worth knowing.',
);

export type FindingJson = Static<typeof FindingSchema>;

export const FindingsSchema = Type.Object(
  {
    format: Type.Literal('dryfit-findings'),
    version: Type.Literal(1),
    files: Type.Integer({ minimum: 0, description: 'How many files were checked.' }),
    errors: Type.Integer({ minimum: 0 }),
    warnings: Type.Integer({ minimum: 0 }),
    infos: Type.Integer({ minimum: 0 }),
    findings: Type.Array(FindingSchema, { description: 'By file, line and column.' }),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:findings:1',
    title: 'Findings',
    description: 'What a check of cabinet files found.',
    additionalProperties: false,
  },
);

export type FindingsJson = Static<typeof FindingsSchema>;
