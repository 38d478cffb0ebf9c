export { type Batch, cabinetLabel, type Item, type TableMaker } from './batch.js';
export { MILLING_CAUTIONS, SAWING_CAUTIONS } from './cautions.js';
export { type Element, element } from './drawing/element.js';
export type {
  Scene,
  SceneCut,
  SceneFinding,
  SceneJoint,
  ScenePart,
  Shape,
  Triple,
} from './drawing/scene.js';
export { type Explained, explain, explainable } from './explain/explain.js';
export { explainedText } from './explain/text.js';
export { type Counts, countFindings, type Found, findingsJson, gatherFindings } from './findings/found.js';
export type { FindingJson, FindingsJson } from './findings/schema.js';
export { type FindingsStyle, findingsText, plural, summary } from './findings/text.js';
export { cabinetId, fitJson, fitJsonText } from './fit-json/fit-json.js';
export type { CabinetJson, FitJson, JointJson, PartJson } from './fit-json/schema.js';
export { tables } from './generated/tables.js';
export type { MilledHalf } from './halves.js';
export { type Locate, type Place, placeOf, type Quoted } from './place.js';
export { printLength, printText } from './print/length.js';
export { type Paint, PLAIN } from './print/paint.js';
export { surfaceName } from './print/surface.js';
export { visible } from './print/visible.js';
export { toCsv } from './table/csv.js';
export { type Laid, layout, noteLines } from './table/layout.js';
export { toMarkdown } from './table/markdown.js';
export { toPlain } from './table/plain.js';
export type { Cell, Column, Table } from './table/table.js';
export { slotRows, table as slotTable } from './tables/slots.js';
