import { Rational } from '@dryfit/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../periodicals.fixture.js';
import { safe, toCsv } from './csv.js';
import { count, EMPTY, length, lengths, type Table, text } from './table.js';

const MM = { units: 'mm' } as const;

function table(rows: Table['rows'], more: Partial<Table> = {}): Table {
  return {
    name: 'trial',
    title: ['Trial'],
    columns: [
      { heading: 'Part', kind: 'text' },
      { heading: 'Pieces', kind: 'count' },
      { heading: 'Off', kind: 'length' },
      { heading: 'At', kind: 'lengths' },
    ],
    rows,
    notes: [['Not in a spreadsheet.']],
    cautions: [],
    ...more,
  };
}

const row = (name: string) => [text(name), count(2), length(mm('-0.2')), lengths([mm(48), mm('158.5')])];

describe('a table as CSV (RFC 4180)', () => {
  it('has one header, CRLF after every record, and a column for each length of a list', () => {
    expect(toCsv(table([row('lh')]), MM)).toBe('Part,Pieces,Off (mm),At 1 (mm),At 2 (mm)\r\nlh,2,-0.2,48,158.5\r\n');
  });

  it('pads shorter lists, so that every record has the same number of fields', () => {
    const short = [text('rh'), count(1), EMPTY, lengths([mm(48)])];
    expect(toCsv(table([row('lh'), short]), MM).split('\r\n')[2]).toBe('rh,1,,48,');
  });

  it('quotes commas, quotes and line ends', () => {
    expect(toCsv(table([row('a "wide", one')]), MM)).toContain('"a ""wide"", one",2');
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\uFF1D1'])(
    'keeps a spreadsheet from running %j',
    (formula) => {
      expect(safe(formula)).toBe(`'${formula}`);
    },
  );

  it('makes names safe and leaves negative numbers alone', () => {
    const csv = toCsv(table([row('=HYPERLINK("x")')]), MM);
    expect(csv).toContain(`"'=HYPERLINK(""x"")",2,-0.2,`);
  });

  it('carries warning and cautions in every record, and keeps the table rectangular', () => {
    const csv = toCsv(
      table([row('lh'), row('rh')], { warning: '1 error was found.', cautions: ['Clamp.', 'Guard.'] }),
      MM,
    );
    expect(csv).toBe(
      'Warning,Part,Pieces,Off (mm),At 1 (mm),At 2 (mm),Cautions\r\n' +
        '1 error was found.,lh,2,-0.2,48,158.5,Clamp. Guard.\r\n' +
        '1 error was found.,rh,2,-0.2,48,158.5,Clamp. Guard.\r\n',
    );
  });

  it('writes millimetres to four places', () => {
    const third = [text('lh'), count(1), length(Rational.of(1, 3)), EMPTY];
    expect(toCsv(table([third]), MM)).toContain('lh,1,0.3333,');
  });

  it('writes inches with their unit, so that 3/4 is not taken for a date, and what rounding lost', () => {
    const inches = [text('lh'), count(1), length(mm('19.05')), lengths([mm(18)])];
    const csv = toCsv(table([inches]), { units: 'in', denominator: 64 });
    expect(csv).toBe('Part,Pieces,Off (in),At 1 (in)\r\nlh,1,3/4 in,45/64 in (+0.14 mm)\r\n');
  });

  it('stays a rectangle that no spreadsheet runs, whatever the names are', () => {
    const hostile = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(...'=+-@\t\r\n",;|'), minLength: 1 }),
    );
    fc.assert(
      fc.property(fc.array(hostile, { minLength: 1 }), (names) => {
        const parsed = parse(toCsv(table(names.map(row), { cautions: ['Clamp.'] }), MM));
        expect(parsed).toHaveLength(names.length + 1);
        for (const record of parsed) {
          expect(record).toHaveLength(6);
          expect(record[0]).not.toMatch(/^[=+\-@\t\r]/);
        }
      }),
    );
  });
});

/** Reads CSV by the grammar of RFC 4180, section 2. */
function parse(csv: string): string[][] {
  const field = '(?:"((?:[^"]|"")*)"|([^",\\r\\n]*))';
  const pattern = new RegExp(`${field}(,|\\r\\n)`, 'gy');
  const records: string[][] = [[]];
  for (const [, quoted, bare = '', end] of csv.matchAll(pattern)) {
    records.at(-1)?.push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
    if (end === '\r\n') records.push([]);
  }
  return records.slice(0, -1);
}
