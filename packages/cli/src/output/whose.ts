/*
 * Which command a file below --out belongs to, by the folder it lies in.
 */

/** Folder of drawings inside the folder of a cabinet. */
export const DRAWINGS = 'drawings';

/** Whether a file below --out is a drawing, and so `draw`'s, or a table, and so `build`'s. */
export const isDrawing = (path: string): boolean => path.split('/').at(-2) === DRAWINGS && path.endsWith('.svg');

/** Folder of the glue-up inside the folder of a cabinet. */
export const GLUE_UP = 'glue-up';

/** Whether a file below --out is `glue-up`'s. */
export const isGlueUp = (path: string): boolean => path.split('/').at(-2) === GLUE_UP;

/** Folder of the printed sheets inside the folder of a job. */
export const SHEETS = 'sheets';

/** Whether a file below --out is `sheets`'. */
export const isSheet = (path: string): boolean => path.split('/').at(-2) === SHEETS;

/** Folder of pieces that are made again, inside the folder of a job. */
export const REMAKES = 'remakes';

/** Whether a file below --out is `remake`'s. */
export const isRemake = (path: string): boolean => path.split('/').at(-2) === REMAKES;

/** Folder of the line strips, which belong to a workshop and not to a cabinet or a job. */
export const STRIPS = 'line-strips';

/** Whether a file below --out is `strip`'s. */
export const isStrip = (path: string): boolean => path.split('/').at(-2) === STRIPS;

/** Whether a file below --out is `build`'s: what no other command makes. */
export const isTable = (path: string): boolean =>
  !isDrawing(path) && !isGlueUp(path) && !isSheet(path) && !isStrip(path) && !isRemake(path);
