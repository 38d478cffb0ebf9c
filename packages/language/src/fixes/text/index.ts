import type { Fix } from '../fix.js';
import { allowText } from './allow-text.js';
import { createImport } from './create-import.js';
import { cutDepth } from './cut-depth.js';
import { declarePart } from './declare-part.js';
import { didYouMean } from './did-you-mean.js';
import { figure } from './figure.js';
import { importIt } from './import-it.js';
import { importPath } from './import-path.js';
import { makeToo } from './make-too.js';
import { offsets } from './offsets.js';
import { oneImport } from './one-import.js';
import { otherName } from './other-name.js';
import { partNumber } from './part-number.js';
import { plane } from './plane.js';
import { remove } from './remove.js';
import { removeAgain } from './remove-again.js';
import { renamePart } from './rename-part.js';
import { side } from './side.js';
import { takeOutOrder } from './take-out-order.js';
import { unit } from './unit.js';
import { whole } from './whole.js';

/** Fixes of what is found in a text before anything is worked out; of one finding, cures are offered in this order. */
export const textFixes: readonly Fix[] = [
  didYouMean,
  importIt,
  importPath,
  createImport,
  declarePart,
  partNumber,
  plane,
  side,
  unit,
  whole,
  offsets,
  figure,
  cutDepth,
  removeAgain,
  otherName,
  oneImport,
  renamePart,
  makeToo,
  takeOutOrder,
  remove,
  allowText,
];
