import { Rational, reckon, render, resultsOf } from '@dryfit/engine';
import { expect, test } from 'vitest';
import { examineText } from '../support/read.js';
import { written } from './corner.js';

const UNIT = { x: 'right', y: 'front', wide: 700, deep: 700, legX: 300, legY: 300 } as const;

async function told(tolerances: string, thickness = '17.7 ± 0.2', inner = false) {
  const text = written({ ...UNIT, inner })
    .replace('17.7 ± 0.2', thickness)
    .replace('cabinet Unit', `tolerances { ${tolerances} }\nlimits { step 0.3  gap 0.5 }\ncabinet Unit`);
  const { results } = await examineText(text);
  const found = results.flatMap(({ findings }) => findings);
  const kinds = ['step-at-joint', 'edges-not-flush', 'gap-at-joint'];
  return found
    .filter(({ code, about }) => kinds.includes(code) && (about.parts ?? []).includes('face'))
    .map(
      ({ code, message, cure }) =>
        `${code}: ${render(message, { units: 'mm' })} Cure: ${render(cure ?? [], { units: 'mm' })}`,
    );
}

test('dirt on the cant makes a step at it, of which legs and lines and the thickness are no part', async () => {
  // Twice up to 0.42 one way is √2 · 0.21 or 0.297 about the middle; 0.43 is 0.304.
  const steps = async (dirt: string) =>
    (await told(`dirt ${dirt}  line ± 0.5  saw ± 0.5`)).filter((one) => one.startsWith('step-at-joint: the front'));
  expect(await steps('0.42')).toEqual([]);
  const [step, ...more] = await steps('0.43');
  expect(more).toEqual([]);
  expect(step).toMatch(
    /the front of face may stand 0\.31 off the cant of base and top, .*dirt on the cant of base .*50 %/,
  );
});

test('legs that the saw leaves off show at the end opposite the datum', async () => {
  // √(0.2² + 2 · (0.2 · cos 45°)²) is 0.283 by root sum square, and with 0.22 it is 0.311.
  expect((await told('saw ± 0.2')).filter((one) => one.startsWith('edges-not-flush'))).toEqual([]);
  const found = (await told('saw ± 0.22')).filter((one) => one.startsWith('edges-not-flush'));
  expect(found.join('\n')).toMatch(/the right of face may stand 0\.32 off the right end of the cant of base and top/);
});

test('a mitre from the heel takes the sheets into the step at its toes, and one from the toe does not', async () => {
  expect(await told('saw ± 0')).toEqual([]);
  // Two faces of 0.2 / cos 22.5° by root sum square are 0.306.
  const [toes, ...more] = await told('saw ± 0', '17.7 ± 0.2', true);
  expect(more).toEqual([]);
  expect(toes).toMatch(
    /^step-at-joint: the toes of face and of end and stub may miss each other by 0\.31 .*reference front/,
  );
  expect(await told('saw ± 0', '17.7 ± 0.19', true)).toEqual([]);
});

test('bevels open a mitre of a turned part as far as its face is long', async () => {
  // A face of 17.7 / cos 22.5° is 19.158 long, and opens √2 · 19.158 · π / 180 or 0.473 for a degree of each bevel.
  expect(await told('mitre ± 1.05 degrees', '17.7')).toEqual([]);
  const [gap] = await told('mitre ± 1.06 degrees', '17.7');
  expect(gap).toMatch(/^gap-at-joint: the mitre of face with end and stub may stand 0\.51 open at its heel or toe/);
});

test('a part with one of its ends free has no room to be told of, and its cant is its span', async () => {
  const text = written(UNIT)
    .replace('between stub.front and end.right', 'to stub.front')
    .replace('cabinet Unit', 'tolerances { saw ± 0.1 }\ncabinet Unit')
    .replace('butt end between', 'depth 382.3 of end\n  butt end between');
  const { results } = await examineText(text);
  const [result] = results;
  if (!result) throw new Error('no cabinet');
  const all = resultsOf(reckon(result.spec));
  expect(all.filter(({ id }) => id.startsWith('face / stub gap'))).toEqual([]);
  const span = all.find(({ id }) => id === 'span face');
  expect(span?.about.kind === 'span' && [span.about.span.between, span.about.span.through]).toEqual([
    undefined,
    ['base'],
  ]);
  if (!span || !('curve' in span.adds)) throw new Error('no span');
  expect(span.adds.curve.of.map(({ plus }) => plus.equals(Rational.of(1, 10)))).toEqual([true, true]);
});
