import { resolve } from 'node:path';
import type { FitResult, LengthFormat } from '@dryfit/engine';
import {
  cabinetLabel,
  elevation,
  exploded,
  plural,
  printText,
  type Scene,
  sceneOf,
  svgFile,
  type View,
} from '@dryfit/output';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { folderNames } from '../output/names.js';
import { DRAWINGS, isDrawing } from '../output/whose.js';
import { type Written, writeWhole } from '../output/write.js';
import { sound } from '../sound.js';
import { variants } from '../variants.js';

export interface DrawOptions extends FindingOptions, View {
  readonly out: string;
  readonly part?: string | undefined;
  readonly withErrors?: boolean | undefined;
}

/** Writes every cabinet of a file exploded, and each different piece of it dimensioned, as SVG. */
export async function draw(file: string, options: DrawOptions, io: Io): Promise<number> {
  if (options.out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'drawn');
  if (found === undefined) return ERRORS;
  const { examination, format, counts } = found;
  const results = variants(examination).map(({ result }) => result);
  if (results.length === 0) throw new Misuse(`there is no cabinet in ${file}, so there is nothing to draw`);
  const files = filesOf(results, counts.errors, format, options);
  if (files.length === 0) throw new Misuse(unknown(options.part ?? '', results));
  const { written, removed } = await io.uninterrupted(() =>
    writeWhole(resolve(io.cwd, options.out), resolve(io.cwd, file), files, isDrawing),
  );
  io.out.write(`wrote ${plural(written, 'drawing')} to ${options.out}\n`);
  if (removed > 0) io.out.write(`removed ${plural(removed, 'drawing')} of ${file} made earlier\n`);
  return counts.errors > 0 ? ERRORS : CLEAN;
}

function filesOf(
  results: readonly FitResult[],
  errors: number,
  format: LengthFormat,
  options: DrawOptions,
): readonly Written[] {
  // Folders are called as `build` calls them, so that tables and drawings of a cabinet come to lie together.
  const folders = folderNames(results.map(({ fit }) => printText(cabinetLabel(fit), { units: 'mm' })));
  return results.flatMap((result, i) => {
    const scene = { ...sceneOf(result, result.findings, format), errors };
    return drawingsOf(scene, options).map(({ path, text }) => ({
      path: `${folders[i]}/${DRAWINGS}/${path}.svg`,
      text,
    }));
  });
}

/** The whole cabinet and one drawing of each different piece, called after its first part; or one part alone. */
function drawingsOf(scene: Scene, { part, turn, tilt, apart }: DrawOptions): readonly Written[] {
  const pieces =
    part === undefined
      ? scene.parts.filter((one, i) => isFirst(scene, one.same, i))
      : scene.parts.filter((one) => one.part === part);
  // The name of the whole comes first, so that a part called so is the one that gets another.
  const [whole = '', ...names] = folderNames(['exploded', ...pieces.map((one) => one.part)]);
  return [
    ...(part === undefined
      ? [{ path: whole, text: svgFile(exploded(scene, { turn, tilt, apart }, { tight: true })) }]
      : []),
    ...pieces.map((one, i) => ({ path: names[i] as string, text: svgFile(elevation(scene, one.part)) })),
  ];
}

const isFirst = (scene: Scene, same: number, i: number): boolean =>
  scene.parts.findIndex((other) => other.same === same) === i;

function unknown(part: string, results: readonly FitResult[]): string {
  const names = new Set(results.flatMap(({ fit }) => fit.parts.map(({ id }) => id)));
  return `there is no part called ${part}; there is ${[...names].sort().join(', ')}`;
}
