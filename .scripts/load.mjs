import { build } from 'esbuild';

/** The exports of a TypeScript source file, its imports bundled, without a build of the packages. */
export async function load(file) {
  const { outputFiles } = await build({
    entryPoints: [file],
    bundle: true,
    write: false,
    format: 'esm',
    platform: 'node',
    conditions: ['source'],
    logLevel: 'warning',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}
