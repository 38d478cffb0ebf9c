import { describe, expect, test } from 'vitest';
import { marked } from '../testing/marked.fixture.js';
import { serve } from './served.fixture.js';

const CABINET = `units mm
// For the reading room.
cabinet Rack {
  // Over the sides.
  parameter wide = 600
  parameter high = 2 * 350 // with the plinth
  parameter shelves : count = 3
}
`;

async function help(line: string) {
  const { text, offset } = marked(`import "rack.joinery"\n${line}`);
  const { joinery, document, at } = await serve({ 'rack.joinery': CABINET, 'job.joinery': text });
  const found = await joinery.lsp.SignatureHelp?.provideSignatureHelp(
    document('job.joinery'),
    at('job.joinery', offset),
  );
  const signature = found?.signatures[0];
  const parameter = signature?.parameters?.[found?.activeParameter ?? -1];
  const [start, end] = (parameter?.label ?? [0, 0]) as [number, number];
  return { signature, active: signature?.label.slice(start, end), about: JSON.stringify(parameter?.documentation) };
}

describe('parameters of a cabinet in a line of a job', () => {
  test('are shown as they are written, with unit and comment', async () => {
    const { signature, active, about } = await help('job J { 4 of Rack(| }');
    expect(signature?.label).toBe('Rack(wide = 600, high = 2 * 350, shelves = 3)');
    expect(signature?.documentation).toBe('For the reading room.');
    expect(active).toBe('wide = 600');
    expect(about).toContain('Over the sides.');
    expect(about).toContain('a length, in mm');
  });

  test('follow the cursor', async () => {
    expect((await help('job J { 4 of Rack(high = |')).active).toBe('high = 2 * 350');
    expect((await help('job J { 4 of Rack(high = 700, |')).active).toBe('wide = 600');
    expect((await help('job J { 4 of Rack(wide = 600, s|')).active).toBe('shelves = 3');
    expect((await help('job J { 4 of Rack(wide = (600 + 3|')).active).toBe('wide = 600');
    expect((await help('job J {\n 4 of Rack(wide = 600, |\n 2 of Rack(high = 3)\n}')).active).toBe('high = 2 * 350');
    expect((await help('job J { 4 of Rack(high = 3|')).about).toContain('with the plinth');
  });

  test('are shown nowhere else', async () => {
    for (const line of [
      'job J { 4 of Rack|(',
      'job J { 4 of Rack(wide = 3)|',
      'job J { 4 of None(|',
      'cabinet B { width (|',
    ]) {
      expect((await help(line)).signature).toBeUndefined();
    }
  });
});
