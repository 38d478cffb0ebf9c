import type { Finding } from '@dryfit/engine';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import schema from '../../schema/fit.schema.json' with { type: 'json' };
import { JOINTS, locate, PARTS, parameter, part, result, source } from '../periodicals.fixture.js';
import { fitJson, fitJsonText } from './fit-json.js';

const MM = { units: 'mm' } as const;
const validate = new Ajv2020({ allErrors: true }).compile(schema);

function written(more: Parameters<typeof result>[0] = {}, findings: readonly Finding[] = []) {
  const batch = {
    title: ['Periodicals'],
    items: [{ result: result(more, { silenced: findings }), count: 4 }],
    errors: 0,
  };
  const found = findings.map((finding) => ({ finding, cabinets: [] }));
  return fitJson('cabinet', batch, found, locate, MM);
}

describe('fit.json', () => {
  it('is what the published schema describes', () => {
    validate(JSON.parse(fitJsonText(written())));
    expect(validate.errors).toBeNull();
  });

  it('is refused by the schema when a member is unknown', () => {
    expect(validate({ ...written(), more: 1 })).toBe(false);
  });

  it('holds exact lengths as fractions, with the nearest decimal beside them', () => {
    const shelf = written().cabinets[0]?.parts.find((one) => one.id === 'shelf');
    expect(shelf?.width?.length).toEqual({ exact: '2823/5', mm: 564.6 });
    expect(shelf?.cut?.width).toEqual({ exact: '538', mm: 538 });
  });

  it('gives the facts a size sums up from, with their places', () => {
    const shelf = written().cabinets[0]?.parts.find((one) => one.id === 'shelf');
    const reasons = shelf?.width?.reasons ?? [];
    expect(reasons.map((reason) => reason.adds.exact)).toEqual(['0', '-177/10', '-177/10', '600']);
    expect(reasons.at(-1)).toMatchObject({
      text: 'width 600 over lh and rh',
      place: { file: 'bases.joinery', line: 4, column: 3 },
    });
  });

  it('gives both halves of a joint', () => {
    const joint = written().cabinets[0]?.joints.find((one) => one.id === 'shelf / lh');
    expect(
      joint?.halves.map((half) => [
        half.part,
        half.slots[0]?.fromDatum.exact,
        half.spacer.kind,
        half.stop?.distance.mm,
      ]),
    ).toEqual([
      ['shelf', '48', 'stock', undefined],
      ['lh', '70', 'none', 350],
    ]);
  });

  it('is the same whatever order parts, joints and parameters come in', () => {
    const parameters = [parameter('wide', 450, true), parameter('deep', 320, true)];
    const forward = written({ parameters });
    const backward = written({
      parameters: [...parameters].reverse(),
      parts: [...PARTS].reverse(),
      joints: [...JOINTS].reverse(),
    });
    expect(fitJsonText(backward)).toBe(fitJsonText(forward));
    expect(forward.cabinets[0]?.id).toBe('Periodicals(deep=320, wide=450)');
  });

  it('leaves out what is not known, and still fits the schema', () => {
    const finding: Finding = {
      code: 'part-not-fixed',
      severity: 'error',
      message: ['loose is not fixed in x'],
      cure: ['Say how wide it is.'],
      source: source(),
      related: [],
      about: { parts: ['loose'] },
    };
    const document = written({ parts: [part('loose', 'level', undefined)], joints: [], outside: undefined }, [finding]);
    expect(validate(JSON.parse(fitJsonText(document)))).toBe(true);
    const [cabinet] = document.cabinets;
    expect([cabinet?.outside, cabinet?.parts[0]?.planes, cabinet?.parts[0]?.cut]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(cabinet?.allowed[0]).toMatchObject({ code: 'part-not-fixed', cabinets: ['Periodicals'] });
    expect(document.findings[0]).toMatchObject({ code: 'part-not-fixed', place: { file: 'bases.joinery', line: 2 } });
  });
});
