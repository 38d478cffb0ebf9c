import type { Reporter } from '../findings/report.js';
import { againstSameWay } from './against-same-way.js';
import { allowUnused } from './allow-unused.js';
import { divisionByZero } from './division-by-zero.js';
import { duplicateName } from './duplicate-name.js';
import { factMissing } from './fact-missing.js';
import { flushSidesDiffer } from './flush-sides-differ.js';
import { hyphenedFraction } from './hyphened-fraction.js';
import { importClash } from './import-clash.js';
import { layerCycle } from './layer-cycle.js';
import { missingImport } from './missing-import.js';
import { nameOfASide } from './name-of-a-side.js';
import { neverUsed } from './never-used.js';
import { noReason } from './no-reason.js';
import { noSuchPart } from './no-such-part.js';
import { noSuchPlane } from './no-such-plane.js';
import { notInJob } from './not-in-job.js';
import { notOfThisKind } from './not-of-this-kind.js';
import { notWhole } from './not-whole.js';
import { offsetCount } from './offset-count.js';
import { onePartWanted } from './one-part-wanted.js';
import { orderCycle } from './order-cycle.js';
import { parameterCycle } from './parameter-cycle.js';
import { settingMissing } from './setting-missing.js';
import { settingWrong } from './setting-wrong.js';
import { syntax } from './syntax.js';
import { unitMismatch } from './unit-mismatch.js';
import { unknownCheck } from './unknown-check.js';
import { unknownName } from './unknown-name.js';
import { writtenTwice } from './written-twice.js';
import { wrongSide } from './wrong-side.js';

/** Every check of the language, in the order of their names; the engine has its own. */
export const languageChecks: readonly Reporter[] = [
  againstSameWay,
  allowUnused,
  divisionByZero,
  duplicateName,
  factMissing,
  flushSidesDiffer,
  hyphenedFraction,
  importClash,
  layerCycle,
  missingImport,
  nameOfASide,
  neverUsed,
  noReason,
  noSuchPart,
  noSuchPlane,
  notInJob,
  notOfThisKind,
  notWhole,
  offsetCount,
  onePartWanted,
  orderCycle,
  parameterCycle,
  settingMissing,
  settingWrong,
  syntax,
  unitMismatch,
  unknownCheck,
  unknownName,
  writtenTwice,
  wrongSide,
];
