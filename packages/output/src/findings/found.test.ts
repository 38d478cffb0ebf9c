import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import schema from '../../schema/findings.schema.json' with { type: 'json' };
import { locate, mm, source } from '../periodicals.fixture.js';
import { findingsJson } from './found.js';

const validate = new Ajv2020({ allErrors: true }).compile(schema);

describe('findings as JSON', () => {
  it('are what the published schema describes', () => {
    const finding = {
      code: 'pair-too-short',
      severity: 'error',
      message: ['two need ', mm('146.4'), '; there are ', mm('101.6')],
      cure: ['Take a shorter connector.'],
      source: source('butt shelf between lh and rh'),
      related: [{ message: ['declared here'], source: source('part lh') }],
      about: { parts: ['shelf'], joint: 'shelf / lh', statement: 'butt shelf between lh and rh' },
      data: { need: '732/5', have: '508/5' },
    } as const;
    const document = findingsJson([{ finding, cabinets: [['Periodicals']] }], 1, locate, { units: 'mm' });
    validate(JSON.parse(JSON.stringify(document)));
    expect(validate.errors).toBeNull();
    expect(document.findings[0]).toEqual({
      code: 'pair-too-short',
      severity: 'error',
      message: 'two need 146.4; there are 101.6',
      cure: 'Take a shorter connector.',
      cabinets: ['Periodicals'],
      place: { file: 'bases.joinery', line: 4, column: 3, endLine: 4, endColumn: 31 },
      related: [
        { message: 'declared here', place: { file: 'bases.joinery', line: 3, column: 3, endLine: 3, endColumn: 10 } },
      ],
      parts: ['shelf'],
      joint: 'shelf / lh',
      slots: [],
      data: { have: '508/5', need: '732/5' },
    });
  });
});
