import { describe, expect, test } from 'vitest';
import { FilesInMemory, tell } from '../testing/files.fixture.js';

const desk = (...lines: string[]) =>
  ['material ply { thickness 18 }', 'cabinet Desk {', '  part a : upright of ply', ...lines, '}'].join('\n');

/** The length of the one dimension line of a text, in mm, and what it depends on. */
async function length(text: string, units = 'mm') {
  const { cabinets } = await new FilesInMemory({ 'desk.joinery': `units ${units}\n${text}` }).examine('desk.joinery');
  const statement = cabinets[0]?.spec.statements.find(({ kind }) => kind === 'dimension');
  if (statement?.kind !== 'dimension') return undefined;
  const { value, terms } = statement.length;
  return [`${value}`, ...terms.map(({ input, coefficient }) => `${input} * ${coefficient}`)].join(', ');
}

describe('lengths', () => {
  test.each([
    ['18', 'mm', '18'],
    ['18', 'in', '2286/5'],
    ['18mm', 'in', '18'],
    ['3/4"', 'mm', '381/20'],
    ['23 1/4 in', 'mm', '11811/20'],
    ['0.1 + 1/64" + 100 / 3', 'mm', '32477/960'],
    ['2 * (40 + 5) - 6 / 4', 'mm', '177/2'],
    ['-(3 - 10)', 'mm', '7'],
    ['600 - 400 - 100', 'mm', '100'],
    ['600 / 4 / 2', 'mm', '75'],
    ['100 mm * (300 mm / 150 mm)', 'mm', '200'],
    ['1 in + 1', 'in', '254/5'],
  ])('%s in a file in %s', async (text, units, value) => {
    expect(await length(desk(`width ${text} of a`), units)).toBe(value);
  });

  test('depend on parameters to the first order', async () => {
    const parameters = ['parameter wide = 600', 'parameter gaps : count = 3', 'parameter half = wide / 2'];
    expect(await length(desk(...parameters, 'width (wide - 2 * 30) / gaps of a'))).toBe(
      '180, parameter gaps * -60, parameter wide * 1/3',
    );
    expect(await length(desk(...parameters, 'width half + 10 of a'))).toBe('310, parameter wide * 1/2');
  });

  test('keep their tolerance as a fact of their own', async () => {
    const { cabinets } = await new FilesInMemory({
      'desk.joinery': desk('parameter deep = 300 ± 0.3', 'width 18 plus 0.7 minus 0.9 of a', 'depth deep of a'),
    }).examine('desk.joinery');
    const spec = cabinets[0]?.spec;
    expect(
      spec?.inputs.map(({ id, kind, tolerance }) => [id, kind, `${tolerance?.plus}`, `${tolerance?.minus}`]),
    ).toEqual([
      ['parameter deep', 'parameter', '3/10', '3/10'],
      ['width of a 1', 'literal', '7/10', '9/10'],
    ]);
    const [width] = spec?.statements ?? [];
    expect(width?.kind === 'dimension' && width.length.terms.map(({ input }) => input)).toEqual(['width of a 1']);
  });
});

describe('what does not go together is found where it stands', () => {
  test.each([
    ['width 40 mm + gaps of a', 'unit-mismatch `+`: gaps is a count and cannot be added to 40 mm, which is a length'],
    ['width gaps - 40 mm of a', 'unit-mismatch `-`: 40 mm is a length and cannot be taken from gaps, which is a count'],
    [
      'width 40 mm * 2 mm of a',
      'unit-mismatch `*`: a length times a length is an area, which nothing here is measured by',
    ],
    ['width 40 / 2 mm of a', 'unit-mismatch `/`: a number divided by a length is neither a length nor a count'],
    ['width gaps of a', 'unit-mismatch `gaps`: gaps is a count, and a length is wanted here'],
    ['width 40 / (2 - 2) of a', 'division-by-zero `/`: (2 - 2) comes to 0, and nothing can be divided by it'],
    ['width 4/0 of a', 'division-by-zero `4/0`: 4/0 divides by nothing'],
    ['width 23-1/4 of a', 'hyphened-fraction `23-1/4`: 23-1/4 reads as a subtraction and is meant as one number'],
    [
      'width 3 * /* two */ 2 mm * 2 mm of a',
      'unit-mismatch `*`: a length times a length is an area, which nothing here is measured by',
    ],
    ['parts b 1 to 2.5 : upright of ply', 'not-whole `2.5`: 2.5 comes to 5/2, and a count is a whole number'],
    ['parts b 1 to 20 mm : upright of ply', 'unit-mismatch `20 mm`: 20 mm is a length, and a count is wanted here'],
    ['parameter n : count = 3 mm', 'unit-mismatch `3 mm`: 3 mm is a length, and n is a count'],
    ['parameter n = gaps', 'unit-mismatch `gaps`: gaps is a count, and n is a length'],
    ['parameter n = m  parameter m = n + 1', 'parameter-cycle `n`: n depends on itself: n needs m needs n'],
  ])('%s', async (line, wanted) => {
    const codes = ['unit-mismatch', 'division-by-zero', 'hyphened-fraction', 'not-whole', 'parameter-cycle'];
    expect(await tell(desk('parameter gaps : count = 3', line), ...codes)).toEqual([wanted]);
  });
});
