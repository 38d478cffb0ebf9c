import { TextDocument, URI } from 'langium';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { refreshLensesLeft } from './lenses-left.js';
import { serve, uriOf } from './served.fixture.js';

const uri = uriOf('rack.joinery');
const textOf = (width: number) => `material ply { thickness ${width} }\ncabinet Rack {\n  part a : upright of ply\n}\n`;

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => void vi.useRealTimers());

/** A file that an editor has lenses of, which are asked for again after a moment without a question. */
async function shown() {
  const { shared, joinery, document } = await serve({ 'rack.joinery': textOf(18) });
  const { DocumentBuilder, TextDocuments } = shared.workspace;
  DocumentBuilder.updateBuildOptions = { validation: true };
  const refresh = vi.fn();
  const ask = () =>
    joinery.lsp.CodeLensProvider?.provideCodeLens(document('rack.joinery'), { textDocument: { uri: `${uri}` } });
  const edit = async (version: number) => {
    TextDocuments.set(TextDocument.create(`${uri}`, 'joinery', version, textOf(18 + version)));
    await DocumentBuilder.update([URI.parse(`${uri}`)], []);
  };
  await edit(1);
  const wait = () => vi.advanceTimersByTime(1000);
  refreshLensesLeft(joinery, refresh, 1000);
  return { ask, edit, wait, refresh };
}

test('lenses of an earlier text are asked for again, once', async () => {
  const { ask, edit, wait, refresh } = await shown();
  await ask();
  await edit(2);
  wait();
  expect(refresh).toHaveBeenCalledTimes(1);
  await edit(2);
  wait();
  expect(refresh).toHaveBeenCalledTimes(1);
});

test('an editor that asks by itself, or never did, is left alone', async () => {
  const { ask, edit, wait, refresh } = await shown();
  await edit(2);
  wait();
  await ask();
  await edit(3);
  await ask();
  wait();
  expect(refresh).not.toHaveBeenCalled();
});
