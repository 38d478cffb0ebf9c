import { checkCodes } from '@dryfit/engine';
import { curesOf } from '@dryfit/language';
import { describe, expect, it } from 'vitest';
import { Bench, TEXT } from './support/bench.js';
import { failing } from './support/occurrences.js';

/** Checks for which no text can be changed so that the trouble is gone, and why; they can be allowed with a reason. */
const NO_CHANGE: Readonly<Record<string, string>> = {
  'glue-sets-first': 'how long glue stays open, and which joint goes without it, is for the workshop to say',
  'gap-at-joint': 'the bench has to come out nearer, or the shop to let more pass',
  'no-fence': 'what fences a jig has, and how pieces may be held at it, is for the workshop to say',
  'moisture-out-of-range': 'moisture is what it is where the cabinet stands',
};

/** Fixes that put up with a finding rather than change the joinery. */
const PUTS_UP = ['allow', 'say-how'];

const bench = new Bench();

async function offered(code: string): Promise<ReadonlySet<string>> {
  const names = new Set<string>();
  for (const text of failing(code)) {
    const { document, examination } = await bench.lay({ [TEXT]: text });
    for (const finding of examination.findings.filter((one) => one.code === code))
      for (const { fix } of await curesOf(finding, document, bench.services.joinery, bench.trial)) names.add(fix.name);
  }
  return names;
}

describe.each(checkCodes)('%s', (code) => {
  it('can be allowed, and is cured by a change unless none is to be had', async () => {
    const names = await offered(code);
    expect(names).toContain('allow');
    const changes = [...names].filter((name) => !PUTS_UP.includes(name));
    if (NO_CHANGE[code] === undefined) expect(changes).not.toEqual([]);
    else expect(changes).toEqual([]);
  });
});
