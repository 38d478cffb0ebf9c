import { afterEach, expect, test } from 'vitest';
import { BASES, lindwell, none, SHOP, some, stopAll, TOO_NEAR } from './lindwell.js';

afterEach(stopAll);

const open = async (text: string, settings: object = {}) => {
  const editor = await lindwell({ 'shop.joinery': SHOP, 'bases.joinery': text }, { settings });
  await editor.open('bases.joinery');
  return editor;
};

test('a fix writes the silence where it belongs, and once it has no effect it is a finding', async () => {
  const editor = await open(TOO_NEAR);
  await editor.until('bases.joinery', (codes) => codes.includes('slot-near-edge'));
  const allow = (await editor.fixes('bases.joinery', 'slot-near-edge')).find(({ title }) =>
    title.startsWith('Allow slot-near-edge'),
  );
  expect(allow).toBeDefined();
  if (allow) await editor.apply('bases.joinery', allow);
  await editor.until('bases.joinery', (codes) => !codes.includes('slot-near-edge'));
  await editor.type('bases.joinery', editor.textOf('bases.joinery').replace('lines 60', 'lines 70'));
  await editor.until('bases.joinery', (codes) => codes.includes('allow-unused'));
  const [remove] = await editor.fixes('bases.joinery', 'allow-unused');
  expect(remove).toBeDefined();
  if (remove) await editor.apply('bases.joinery', remove);
  await editor.until('bases.joinery', none);
});

test('a silence carries its reason', async () => {
  const editor = await open(TOO_NEAR.replace('cabinet Periodicals {', 'cabinet Periodicals {\n  allow slot-near-edge'));
  const codes = await editor.until('bases.joinery', some);
  expect(codes).toEqual(expect.arrayContaining(['syntax', 'slot-near-edge']));
});

test('how grave a check is taken to be is a setting; an error is not turned off, which is told once', async () => {
  const editor = await open(TOO_NEAR, { severity: { 'slot-near-edge': 'info' } });
  const severity = () => editor.diagnostics('bases.joinery').find(({ code }) => code === 'slot-near-edge')?.severity;
  await editor.when(() => (severity() === 3 ? true : undefined));
  await editor.set({ severity: { 'slot-near-edge': 'off' } });
  await editor.when(() => (severity() === 1 ? true : undefined));
  expect(editor.messages).toEqual([expect.stringContaining('slot-near-edge finds what cannot be made')]);
  await editor.set({ severity: { 'slot-near-edge': 'off', 'slot-near-egde': 'info' } });
  await editor.when(() => editor.messages[1]);
  expect(editor.messages).toEqual([expect.anything(), expect.stringContaining('did you mean slot-near-edge?')]);
});

test('a warning can be turned off', async () => {
  const editor = await open(BASES.replace('parameter deep', 'parameter spare = 3\n  parameter deep'));
  expect(await editor.until('bases.joinery', some)).toEqual(['never-used']);
  await editor.set({ severity: { 'never-used': 'off' } });
  await editor.until('bases.joinery', none);
});
