import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checkCodes, render } from '@dryfit/engine';
import { curesOf, type Fix, fixes } from '@dryfit/language';
import { expect, it } from 'vitest';
import { Bench, TEXT } from './support/bench.js';
import { changedLines } from './support/changes.js';
import { failing } from './support/occurrences.js';

const folder = fileURLToPath(new URL('before-after/', import.meta.url));
const bench = new Bench();

/** The first cure of a fix for a check, on the failing examples of its page. */
async function shown(fix: Fix, code: string): Promise<string | undefined> {
  for (const text of failing(code)) {
    const { document, examination } = await bench.lay({ [TEXT]: text });
    for (const finding of examination.findings) {
      if (finding.code !== code) continue;
      const [cure] = await curesOf(finding, document, bench.services.joinery, bench.trial, {
        among: [fix],
        newFiles: true,
      });
      if (!cure) continue;
      const after = bench.changed(cure);
      const before = bench.changed({ edits: [] });
      const changes = Object.keys(after)
        .filter((file) => after[file] !== before[file])
        .map(
          (file) =>
            `${file === TEXT ? '' : `In ${file}:\n\n`}\`\`\`diff\n${changedLines(before[file] ?? '', after[file] ?? '')}\n\`\`\``,
        );
      const message = render(finding.message, { units: examination.units });
      return `## ${code}\n\n> ${message}\n\n**${cure.title}**\n\n${changes.join('\n\n')}\n`;
    }
  }
  return undefined;
}

/** What may follow, one list of checks a reason. */
function byReason({ mayFollow = {} }: Fix): ReadonlyMap<string, readonly string[]> {
  const reasons = new Map<string, string[]>();
  for (const [code, why] of Object.entries(mayFollow)) reasons.set(why, [...(reasons.get(why) ?? []), code]);
  return reasons;
}

it.each(fixes.map((fix) => [fix.name, fix] as const))('%s: what it makes of an example', async (name, fix) => {
  const follow = [...byReason(fix)].map(([why, codes]) => {
    const all = checkCodes.every((code) => codes.includes(code));
    const rest = codes.filter((code) => !all || !checkCodes.includes(code));
    return `- ${[...(all ? ['any check of the joinery'] : []), ...rest].join(', ')}: ${why}`;
  });
  const sections: string[] = [];
  for (const code of fix.codes) sections.push(...[await shown(fix, code)].filter((section) => section !== undefined));
  expect(sections.length).toBeGreaterThan(0);
  const listed = follow.length === 0 ? '' : `What may be found next:\n\n${follow.join('\n')}\n\n`;
  await expect(`# ${name}\n\n${listed}${sections.join('\n')}`).toMatchFileSnapshot(`${folder}${name}.md`);
});

it('nothing is kept of a fix that is no more', () => {
  const kept = existsSync(folder) ? readdirSync(folder) : [];
  expect(kept.filter((file) => !fixes.some(({ name }) => file === `${name}.md`))).toEqual([]);
});
