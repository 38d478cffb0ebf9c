import { expect, it } from 'vitest';
import { textFixes } from '../../packages/language/src/fixes/text/index.js';
import { prove } from './support/prove.js';

it.each(textFixes.map((f) => [f.name, f] as const))(
  '%s',
  async (name, fix) => {
    const t = performance.now();
    const { cured, seen, wrong } = await prove(fix, 40);
    console.log(name, { cured, seen, ms: performance.now() - t }, wrong.slice(0, 2).join('\n---\n'));
  },
  60000,
);
