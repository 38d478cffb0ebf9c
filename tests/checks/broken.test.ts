import { expect, it } from 'vitest';
import { examples } from '../support/examples.js';
import { examineOne } from '../support/read.js';

const broken = examples('broken');
const files = Object.fromEntries([
  ...examples().map(({ name, text }) => [name, text]),
  ...broken.map(({ name, text }) => [`broken/${name}`, text]),
]);

it.each(broken.map(({ name }) => name))('examples/broken/%s shows what it is called after', async (name) => {
  const { findings } = await examineOne(`broken/${name}`, files);
  expect(findings.map(({ code }) => code)).toContain(name.replace('.joinery', ''));
});
