import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FilesInMemory } from '../../packages/language/src/testing/files.fixture.js';
import { extension, root } from './manifest.js';

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

const snippets: Readonly<Record<string, Snippet>> = JSON.parse(
  readFileSync(join(extension, 'snippets/joinery.json'), 'utf8'),
);
const shop = readFileSync(join(root, 'examples/shop.joinery'), 'utf8');

/** A snippet as it comes out when nothing is typed over its places. */
const expand = ({ body }: Snippet): string =>
  body
    .join('\n')
    .replaceAll('\t', '  ')
    .replace(/\$\{\d+:([^}]*)\}/g, '$1')
    .replace(/\$\d/g, '');

const named = (prefix: string): string => {
  const snippet = Object.values(snippets).find((each) => each.prefix === prefix);
  if (!snippet) throw new Error(`no snippet ${prefix}`);
  return expand(snippet);
};

/** Where each may stand: in a file that imports the shop, in the snippet `cabinet`, or as a file of its own. */
const inCabinet = (text: string) => `import "shop.joinery"\n${named('cabinet').replace(/\}\s*$/, `${text}\n}`)}`;
const places: Readonly<Record<string, (text: string) => string>> = {
  cabinet: (text) => `import "shop.joinery"\n${text}`,
  mitred: (text) => `import "shop.joinery"\n${text}`,
  job: (text) => `import "shop.joinery"\n${named('cabinet')}\n${text}`,
  import: (text) => text,
  shop: (text) => text,
  material: (text) => text,
  pattern: (text) => text,
  shelf: inCabinet,
  shelves: inCabinet,
  divider: inCabinet,
  back: inCabinet,
  rebate: inCabinet,
  // Under a base that stands on a plinth.
  notch: (text) =>
    inCabinet(text)
      .replace('flush bottom, rear', 'bottom 120 above lh.bottom  flush rear')
      .replace('height 720 of lh', 'height 720 of lh, rh'),
  // Nothing is to be silenced in the cabinet: that is told, and is all.
  allow: inCabinet,
};

describe.each(Object.entries(snippets))('%s', (_, snippet) => {
  test('says nothing that is wrong', async () => {
    const text = places[snippet.prefix]?.(expand(snippet)) ?? '';
    expect(text).not.toBe('');
    const files = new FilesInMemory({ 'desk.joinery': text, 'shop.joinery': shop });
    const found = (await files.examine('desk.joinery')).findings;
    const wrong = found.filter(({ code }) => !(snippet.prefix === 'allow' && code === 'allow-unused'));
    expect(wrong.map(({ code, severity }) => `${severity} ${code}`).filter((told) => !told.startsWith('info'))).toEqual(
      [],
    );
  });

  test('is described', () => expect(snippet.description.length).toBeGreaterThan(10));
});
