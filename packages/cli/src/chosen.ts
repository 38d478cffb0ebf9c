import type { FitResult } from '@dryfit/engine';
import type { Examination } from './examination.js';
import { Misuse } from './io.js';
import { variants } from './variants.js';

/**
 * The cabinets of a file that are asked about, as they are made: all of them, or those of one name.
 * @throws Misuse if there is none.
 */
export function chosen(examination: Examination, cabinet: string | undefined, file: string): readonly FitResult[] {
  const all = variants(examination).map((variant) => variant.result);
  const results = all.filter((result) => cabinet === undefined || result.fit.name === cabinet);
  if (all.length === 0) throw new Misuse(`there is no cabinet in ${file}`);
  if (results.length > 0) return results;
  const names = [...new Set(all.map((result) => result.fit.name))].sort();
  throw new Misuse(`there is no cabinet ${cabinet} in ${file}; there is ${names.join(', ')}`);
}
