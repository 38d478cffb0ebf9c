import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { load } from '../load.mjs';
import { root } from '../root.mjs';

export const name = 'published JSON schemas';
export const paths = ['packages/output/schema'];

/** One file per schema that packages/output declares. */
export async function write(into) {
  const { schemas } = await load(join(root, 'packages/output/src/schemas.ts'));
  const out = join(into, paths[0]);
  mkdirSync(out, { recursive: true });
  for (const [file, schema] of Object.entries(schemas)) {
    writeFileSync(join(out, `${file}.schema.json`), `${JSON.stringify(schema, null, 2)}\n`);
  }
}
