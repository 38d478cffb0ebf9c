// npm run new-check NAME: the two files of a new check, and its place in the generated list.
// Its page's examples run as tests, and fail until the check finds what the page says.
import { existsSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { write as writeList } from './generators/checks.mjs';
import { root } from './root.mjs';

const code = process.argv[2] ?? '';
if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(code)) {
  console.error(
    'new-check: give a name in kebab-case that says what is wrong, as in: npm run new-check slot-near-edge',
  );
  process.exit(2);
}

const folder = join(root, 'packages/engine/src/checks');
const constant = code.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());
const files = { [join(folder, `${code}.ts`)]: source(), [join(folder, `${code}.md`)]: page() };
const taken = Object.keys(files).find((file) => existsSync(file));
if (taken !== undefined) {
  console.error(`new-check: ${relative(root, taken)} is there already; choose another name or edit that file.`);
  process.exit(1);
}
for (const [file, text] of Object.entries(files)) {
  writeFileSync(file, text);
  console.log(`new-check: ${relative(root, file)}`);
}
await writeList(root);
console.log(
  'new-check: listed in packages/engine/src/generated; next, write the page, then the check until it agrees.',
);

function source() {
  return `import { say } from '../fit/text.js';
import type { Check } from './check.js';

/** What is wrong, in one sentence. */
export const ${constant}: Check = {
  code: '${code}',
  severity: 'error',
  *run(context) {
    for (const joint of context.fit.joints) {
      if (joint.halves.length > 0) continue;
      yield {
        message: say\`what is wrong, and why, with its numbers\`,
        cure: say\`What to change, with the number that would do.\`,
        source: joint.source,
        related: [],
        about: { parts: [], joint: joint.id, slots: [], statement: joint.statement },
      };
    }
  },
};
`;
}

function page() {
  const example = (limits, facts) => `\`\`\`joinery ${limits}
import "shop.joinery"

cabinet Rack {
  part lh, rh : upright of birch18
  part shelf  : level of birch18

  width 400 over lh and rh
  height 300 of lh, rh
  depth 320 of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt shelf between lh and rh {
    bottom 100 above lh.bottom
    flush rear, front
    ${facts}
  }
}
\`\`\`
`;
  return `# ${code}

What is wrong, in one sentence.

Why it is bad for the piece, and the formula with its source.

**What cures it**: the change that a joiner would make.

${example('fails', 'connect biscuit20 by lines 40, 160, 250')}
${example('passes', 'connect biscuit20 by lines 70, 160, 250')}
At the limit, with the numbers worked by hand:

${example('limit passes=42.844 fails=42.843', 'connect biscuit20 by lines @, 160, 250')}`;
}
