export { type Batch, cabinetLabel, type Item, type TableMaker } from './batch.js';
export { calibrationHowTo } from './calibration/how-to.js';
export { calibrationJson } from './calibration/json.js';
export {
  type BaseFound,
  type CalibrationReport,
  canBeSet,
  type DepthReport,
  isCertain,
  type StopReport,
} from './calibration/report.js';
export type { CalibrationJson } from './calibration/schema.js';
export { calibrationText } from './calibration/text.js';
export { GLUING_CAUTIONS, MILLING_CAUTIONS, SAWING_CAUTIONS } from './cautions.js';
export { consumablesJson } from './consumables/json.js';
export type { ConsumablesJson } from './consumables/schema.js';
export * from './drawing/index.js';
export { type Explained, explain, explainable } from './explain/explain.js';
export { explainedText } from './explain/text.js';
export { type Counts, countFindings, type Found, findingsJson, gatherFindings } from './findings/found.js';
export type { FindingJson, FindingsJson } from './findings/schema.js';
export { type FindingsStyle, findingsText, plural, summary } from './findings/text.js';
export { cabinetId, fitJson, fitJsonText } from './fit-json/fit-json.js';
export type { CabinetJson, FitJson, JointJson, PartJson } from './fit-json/schema.js';
export { tables } from './generated/tables.js';
export { glueUpJson } from './glue-up/json.js';
export type { GlueUpJson } from './glue-up/schema.js';
export { type GlueUpSheet, glueUpSheet, type SheetStep } from './glue-up/sheet.js';
export { type GlueUpStyle, glueUpMarkdown, glueUpText } from './glue-up/text.js';
export type { MilledHalf } from './halves.js';
export { type Locate, type Place, placeOf, type Quoted } from './place.js';
export { planJson, planJsonText } from './plan/json.js';
export type { PlanJson } from './plan/schema.js';
export { type SettingFact, settingFacts } from './plan/setting.js';
export { type PlannedJob, planTables } from './plan/tables.js';
export { minutes } from './plan/words.js';
export { printLength, printText } from './print/length.js';
export { type Paint, PLAIN } from './print/paint.js';
export { surfaceName } from './print/surface.js';
export { visible } from './print/visible.js';
export { sheetsHtml } from './sheet/html.js';
export { labelCode, labelPage, labelPages } from './sheet/label-pages.js';
export { type Mark, PAPERS, type Page, type Paper } from './sheet/page.js';
export { type Remake, remakePages, remakeWarnings } from './sheet/remake-pages.js';
export { setUpPages } from './sheet/set-up-page.js';
export { sheetPages } from './sheet/sheets.js';
export { mistaken, stripPages, stripTitle } from './sheet/strip-pages.js';
export { toCsv } from './table/csv.js';
export { type Laid, layout, noteLines } from './table/layout.js';
export { toMarkdown } from './table/markdown.js';
export { toPlain } from './table/plain.js';
export type { Cell, Column, Table } from './table/table.js';
export { table as consumablesTable } from './tables/consumables.js';
export { slotRows, table as slotTable } from './tables/slots.js';
export { batchText } from './tolerance/batch-text.js';
export { toleranceJson } from './tolerance/json.js';
export type { ToleranceJson } from './tolerance/schema.js';
export { toleranceText } from './tolerance/text.js';
