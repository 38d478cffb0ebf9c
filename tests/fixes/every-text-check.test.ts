import { curesOf, languageChecks } from '@dryfit/language';
import { describe, expect, it } from 'vitest';
import { Bench, TEXT } from './support/bench.js';
import { failing } from './support/occurrences.js';

/** Checks of the text that no text can be thought of for, and why. */
const NO_FIX: Readonly<Record<string, string>> = {
  'division-by-zero': 'what it is to be divided by is known to nobody but who wrote it',
  'layer-cycle': 'which of the sheets is no layer of the other is a matter of what is in the rack',
  'no-reason': 'the reason is known to nobody but who allows it',
  'parameter-cycle': 'the value that one of them has by itself is written nowhere',
  'setting-missing': 'the figure is on the machine, on the box or on the sheet, and is to be measured there',
  syntax: 'a line that cannot be read says too little; completion offers what can stand there',
};

const bench = new Bench();

describe.each(languageChecks.map(({ code }) => code))('%s', (code) => {
  it('has a fix, or a reason to have none', async () => {
    const names = new Set<string>();
    for (const text of failing(code)) {
      const { document, examination } = await bench.lay({ [TEXT]: text });
      for (const finding of examination.findings.filter((one) => one.code === code))
        for (const { fix } of await curesOf(finding, document, bench.services.joinery, bench.trial))
          names.add(fix.name);
    }
    if (NO_FIX[code] === undefined) expect([...names]).not.toEqual([]);
    else expect([...names]).toEqual([]);
  });
});
