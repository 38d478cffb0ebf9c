export { languageChecks } from './checks/index.js';
export { type ExaminedFile, examineFiles, shopOfFile, textOfFile, unitsOfFile } from './files.js';
export { type Examination, type ExaminedJob, type ExamineOptions, examine } from './findings/examine.js';
export { nearest } from './findings/nearest.js';
export {
  checkNames,
  type Severities,
  troublesOf,
  WANTED_SEVERITIES,
  type WantedSeverity,
} from './findings/severity.js';
export type { MadeLine, Thickness, Variant } from './fits/fits.js';
export { applied } from './fixes/apply.js';
export { type CureOptions, curesOf, type Proved } from './fixes/cures.js';
export type { Change, Cure, FileEdit, Fix } from './fixes/fix.js';
export { fixes } from './fixes/index.js';
export { Trial } from './fixes/trial.js';
export { formatText } from './format/format.js';
export { type Reader, readerOf } from './format/pieces.js';
export { createJoineryServices } from './module.js';
export { MILLIMETRES, readNumber } from './parser/numbers.js';
export type { JoineryServices } from './services.js';
export { mayBeRead, textOfBytes, Unreadable } from './workspace/readable.js';
