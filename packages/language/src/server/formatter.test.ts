import { Cancellation, OperationCancelled, setInterruptionPeriod, TextDocument } from 'langium';
import { afterEach, expect, test } from 'vitest';
import { serve, uriOf } from './served.fixture.js';

afterEach(() => setInterruptionPeriod(10));

const CABINET = 'cabinet Rack {\n part   lh : upright of birch\n}\n';
const options = { tabSize: 2, insertSpaces: true };

/** A server with a text of many cabinets, and what formatting it comes to once `meanwhile` has had its turn. */
async function formatted(meanwhile: (source: Cancellation.CancellationTokenSource, document: TextDocument) => void) {
  const { joinery, document } = await serve({ 'racks.joinery': CABINET.repeat(300) });
  const own = document('racks.joinery');
  const text = TextDocument.create(`${uriOf('racks.joinery')}`, 'joinery', 1, own.textDocument.getText());
  Object.defineProperty(own, 'textDocument', { value: text });
  const source = new Cancellation.CancellationTokenSource();
  // Gives way at every step, so that what waits has its turn.
  setInterruptionPeriod(0);
  const asked = { textDocument: { uri: `${own.uri}` }, options };
  const answer = joinery.lsp.Formatter?.formatDocument(own, asked, source.token);
  setImmediate(() => meanwhile(source, text));
  return answer;
}

test('a text that stays is formatted', async () => {
  expect(await formatted(() => undefined)).toHaveLength(600);
});

test('formatting is left off when it is called off', async () => {
  await expect(formatted((source) => source.cancel())).rejects.toBe(OperationCancelled);
});

test('formatting is left off when the text goes on', async () => {
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  const typeOn = (_: unknown, text: TextDocument) => TextDocument.update(text, [{ range, text: '\n' }], 2);
  await expect(formatted(typeOn)).rejects.toBe(OperationCancelled);
});
