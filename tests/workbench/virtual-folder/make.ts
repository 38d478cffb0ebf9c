import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Address of the folder that the extension shows. */
export const virtualFolder = 'shelf:/';

/** Writes an extension that shows texts, by their names, as a folder that lies on no disk. */
export async function makeVirtualFolder(into: string, texts: Readonly<Record<string, string>>): Promise<void> {
  await build({
    entryPoints: [fileURLToPath(new URL('extension.ts', import.meta.url))],
    outfile: join(into, 'extension.js'),
    bundle: true,
    format: 'cjs',
    external: ['vscode'],
    define: { FILES: JSON.stringify(texts) },
    logLevel: 'error',
  });
  const manifest = readFileSync(new URL('manifest.json', import.meta.url));
  writeFileSync(join(into, 'package.json'), manifest);
}
