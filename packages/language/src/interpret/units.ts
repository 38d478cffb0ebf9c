import type { File } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';

/** The units that plain numbers of a file are in: millimetres unless it says inches. */
export function unitOf(file: File): Unit {
  return file.units[0]?.unit === 'in' ? 'in' : 'mm';
}
