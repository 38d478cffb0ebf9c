// @ts-nocheck
import { readdirSync } from 'node:fs';
import { render } from '@dryfit/engine';
import { it } from 'vitest';
import { examineExample } from '../support/read.js';
import { contextOf } from '../../packages/engine/src/testing/found.js';
const folder = '/work/main/packages/engine/src/checks/';
const mine = 'handed,look-alike,sheet-too-short,grain-across,never-measured,banded-datum,wrong-face-hides,flush-not-reference,references-differ,part-not-fixed,does-not-close,named-backwards,size-not-positive,openings-negative,shelf-needs-spacer,spacer-not-in-stock,spacer-absurd,spacer-alias,fence-out-of-reach,too-big-for-jig,stop-out-of-range,stop-not-on-step,ends-differ'.split(',');
it('x', async () => {
  for (const name of readdirSync('/work/main/examples').filter((f) => f.endsWith('.joinery'))) {
    const ex = await examineExample(name);
    for (const r of [...ex.cabinets, ...ex.jobs.flatMap((j) => j.lines.map((l) => l.result))]) {
      console.log('##', name, r.fit.name, ex.findings.map((f) => f.code).join());
      const ctx = contextOf(r.spec);
      for (const code of mine) {
        const m = await import(folder + code + '.ts');
        for (const f of m[code.replace(/-(\w)/g, (_, l) => l.toUpperCase())].run(ctx)) console.log('  ', code, '|', render(f.message, { units: r.spec.shop ? 'mm' : 'mm' }), '|', render(f.cure, { units: 'mm' }));
      }
    }
  }
});
