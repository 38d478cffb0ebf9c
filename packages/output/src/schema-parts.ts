import { Type } from '@sinclair/typebox';

/** An object with exactly these members, so that a misspelt one is found. */
export const exactly = <T extends Parameters<typeof Type.Object>[0]>(members: T, description: string) =>
  Type.Object(members, { additionalProperties: false, description });

export const oneOf = <T extends string[]>(words: readonly [...T], description: string) =>
  Type.Unsafe<T[number]>({ type: 'string', enum: words, description });

export const Exact = exactly(
  {
    exact: Type.String({
      pattern: '^-?[0-9]+(/[1-9][0-9]*)?$',
      description: 'The exact length in millimetres, a fraction in lowest terms: "2823/5".',
    }),
    mm: Type.Number({ description: 'The nearest double to it, for convenience.' }),
  },
  'A length that follows from linear facts, known exactly.',
);

export const Approximate = exactly(
  { mm: Type.Number(), error: Type.Number({ minimum: 0, description: 'The true length lies this near, mm.' }) },
  'A length that need not be rational, such as a chord.',
);

export const Place = exactly(
  {
    file: Type.String({ description: 'Path with forward slashes, as the caller names the file.' }),
    line: Type.Integer({ minimum: 1 }),
    column: Type.Integer({ minimum: 1, description: 'In UTF-16 code units, the first being 1.' }),
    endLine: Type.Integer({ minimum: 1 }),
    endColumn: Type.Integer({ minimum: 1, description: 'The first column after the text.' }),
  },
  'Where something is written.',
);

export const Side = oneOf(
  ['left', 'right', 'front', 'rear', 'bottom', 'top'],
  'A side of a part, whatever way it stands.',
);

export const Dimension = oneOf(
  ['width', 'depth', 'height'],
  'An extent: width along x, depth along y, height along z.',
);
