import { expect, it } from 'vitest';
import { example, hoverIn } from './hover.fixture.js';

const plinth = example('corner-plinth.joinery');

it('a turned part says what its width is the root of, and a canted one where its slots are ruled from', async () => {
  const [face, base, joint, mitre] = await hoverIn(plinth, 'part |face', 'part |base', 'butt |face', '|mitre face');
  expect(face).toContain('Finished ≈424.26 × 17.7 × 564.6 mm');
  expect(face).toContain('width from one end of base.cant to the other: the root of off² + off²');
  expect(face).toContain('bottom end, to base');
  expect(base).toContain('80, ≈212.13, ≈344.26 from its cant, at the left end of it');
  expect(joint).toBe(face);
  expect(mitre).toContain('22.5°');
});

it('the joints of a turned part say how far off they come, thickness or no', async () => {
  const [butt, mitre] = await hoverIn(plinth, '|butt face', '|mitre face');
  expect(butt).toMatch(
    /step at the front: ± 0\.04, .*dirt on the cant of base.*; the thickness of the sheet drops out/,
  );
  expect(butt).toMatch(/flush at the right: 0\.03 ± 0\.21, at the worst −0\.49 to 0\.54, of 0\.3 let pass/);
  expect(mitre).toMatch(/opening of the joint: ± 0\.29, at the worst ± 1\.08, of 0\.5 let pass/);
});

it('the words of a cant are told', async () => {
  const [cant, on, plane] = await hoverIn(plinth, '|cant base', 'birch18 o|n base', 'base.c|ant');
  expect(cant).toContain('A corner cut straight off');
  expect(on).toContain('Stands along the cant');
  expect(plane).toContain('The cant of the part');
});
