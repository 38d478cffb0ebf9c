import { resolve } from 'node:path';
import type { FitResult } from '@dryfit/engine';
import {
  cabinetLabel,
  glueUpJson,
  glueUpMarkdown,
  glueUpSheet,
  glueUpText,
  plural,
  printText,
  sceneOf,
  sceneSteps,
  stepDrawing,
  svgFile,
} from '@dryfit/output';
import { chosen } from '../chosen.js';
import { CLEAN, ERRORS, type Io, Misuse } from '../io.js';
import type { FindingOptions } from '../options.js';
import { folderNames } from '../output/names.js';
import { GLUE_UP, isGlueUp } from '../output/whose.js';
import { type Written, writeWhole } from '../output/write.js';
import { paintFor } from '../paint.js';
import { type Sound, sound } from '../sound.js';

export interface GlueUpOptions extends FindingOptions {
  readonly cabinet?: string | undefined;
  readonly out?: string | undefined;
  readonly format?: 'text' | 'json' | undefined;
  readonly withErrors?: boolean | undefined;
}

/** Prints the steps in which cabinets are glued up, or writes them with a drawing each. */
export async function glueUp(file: string, options: GlueUpOptions, io: Io): Promise<number> {
  const { out } = options;
  if (out === '') throw new Misuse('--out is empty; name a folder');
  const found = await sound(file, options, io, 'planned');
  if (found === undefined) return ERRORS;
  const results = chosen(found.examination, options.cabinet, file);
  if (options.format === 'json') {
    io.out.write(`${JSON.stringify(glueUpJson(results, found.format), undefined, 2)}\n`);
  } else if (out === undefined) {
    const style = { format: found.format, paint: paintFor(io.out, io.env), errors: found.counts.errors };
    io.out.write(results.map((result) => glueUpText(result, glueUpSheet(result), style)).join('\n'));
  }
  if (out !== undefined) {
    const files = filesOf(results, found);
    const { written, removed } = await io.uninterrupted(() =>
      writeWhole(resolve(io.cwd, out), resolve(io.cwd, file), files, isGlueUp),
    );
    io.err.write(`wrote ${plural(written, 'file')} to ${out}\n`);
    if (removed > 0) io.err.write(`removed ${plural(removed, 'file')} of ${file} made earlier\n`);
  }
  return found.counts.errors > 0 ? ERRORS : CLEAN;
}

/** For each cabinet a sheet, and a drawing of each of its steps beside it. */
function filesOf(results: readonly FitResult[], { format, counts }: Sound): readonly Written[] {
  // Folders are called as `build` calls them, so that all of a cabinet comes to lie together.
  const folders = folderNames(results.map(({ fit }) => printText(cabinetLabel(fit), { units: 'mm' })));
  return results.flatMap((result, i) => {
    const folder = `${folders[i]}/${GLUE_UP}`;
    const scene = { ...sceneOf(result, result.findings, format), errors: counts.errors, steps: sceneSteps(result) };
    const drawings = scene.steps.flatMap((_, step) => {
      const drawing = stepDrawing(scene, step);
      return drawing ? [{ path: `step-${step + 1}.svg`, text: svgFile(drawing) }] : [];
    });
    const sheet = glueUpMarkdown(
      result,
      glueUpSheet(result),
      { format, errors: counts.errors },
      drawings.map(({ path }) => path),
    );
    return [{ path: 'glue-up.md', text: sheet }, ...drawings].map(({ path, text }) => ({
      path: `${folder}/${path}`,
      text,
    }));
  });
}
