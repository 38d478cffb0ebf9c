export * from './beam.js';
export { growth, type Moisture, RULE_HOLDS, ruleHolds, USUAL_MOISTURE } from './movement.js';
export { type NotReckoned, type Sag, sagOf, shelvesUnderLoad } from './shelf.js';
export { type CapturedPanel, type GluedAcross, moistureOf, solidWood } from './solid-wood.js';
export type { Gap } from './supports.js';
export { LOAD_CAUTIONS, type SagFact, sagFacts } from './words.js';
