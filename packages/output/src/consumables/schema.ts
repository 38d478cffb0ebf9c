import { type Static, Type } from '@sinclair/typebox';
import { Exact, exactly, oneOf } from '../schema-parts.js';

/** Written once in the published schema. */
export const Amount = exactly(
  {
    exact: Type.String({ pattern: '^[0-9]+(/[1-9][0-9]*)?$', description: 'A fraction in lowest terms.' }),
    value: Type.Number({ minimum: 0, description: 'The nearest double to it, for convenience.' }),
  },
  'Connectors as a number, bands in mm, glue in grams.',
);

const AREA = { minimum: 0, description: 'mm².' };

const NEED = {
  name: Type.String(),
  needed: Amount,
  spare: Amount,
  share: exactly(
    { of: Type.Number({ minimum: 0, maximum: 1 }), written: Type.Boolean({ description: 'By the shop.' }) },
    'The spare in parts of what is needed.',
  ),
  inAll: Amount,
  buy: Type.Optional(
    exactly(
      {
        packs: Type.Array(
          exactly(
            {
              size: Amount,
              text: Type.String({ description: 'As the shop writes it.' }),
              count: Type.Integer({ minimum: 1 }),
            },
            'Packs of one size.',
          ),
        ),
        holds: Amount,
        over: Amount,
        proven: Type.Boolean({ description: 'No other choice leaves less over, or as little in fewer packs.' }),
      },
      'What is bought; absent where the shop does not say what it is sold in.',
    ),
  ),
};

export const ConsumablesSchema = Type.Object(
  {
    format: Type.Literal('dryfit-consumables'),
    version: Type.Literal(1),
    title: Type.String(),
    errors: Type.Integer({
      minimum: 0,
      description: 'Errors found; when there are any, nothing here is to be bought.',
    }),
    connectors: Type.Array(
      exactly(
        { ...NEED, shape: oneOf(['biscuit', 'loose tenon', 'dowel'], 'Kind of connector.') },
        'Connectors of one kind.',
      ),
    ),
    bands: Type.Array(
      exactly({ ...NEED, thickness: Exact, pieces: Type.Integer({ minimum: 1 }) }, 'Bands of one kind.'),
    ),
    glue: Type.Optional(
      exactly(
        {
          ...NEED,
          spread: Type.Number({ exclusiveMinimum: 0, description: 'Grams on a square metre of a glue line.' }),
          written: Type.Boolean({
            description: 'The shop describes its glue; the spread is the language’s own if not.',
          }),
          areas: exactly(
            { faces: Type.Number(AREA), connectors: Type.Number(AREA), layers: Type.Number(AREA) },
            'Glue lines: where parts touch, round connectors, between layers.',
          ),
        },
        'Glue.',
      ),
    ),
  },
  {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: 'urn:dryfit:consumables:1',
    title: 'Consumables',
    description: 'What a job uses up, and what is bought for it.',
    additionalProperties: false,
  },
);

export type ConsumablesJson = Static<typeof ConsumablesSchema>;
