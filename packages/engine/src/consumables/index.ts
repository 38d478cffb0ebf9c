export { type BandLength, bandLengths } from './bands.js';
export { type Counted, connectorsIn, countConnectors } from './connectors.js';
export {
  type BandNeed,
  type ConnectorNeed,
  type Consumables,
  consumablesOf,
  type GlueNeed,
  type Need,
} from './consumables.js';
export { connectorArea, type GlueAreas, glueAreas } from './glue.js';
export { isGlued } from './glued.js';
export { type Purchase, packsFor } from './packs.js';
export { USUAL_SPARE, USUAL_SPREAD } from './usual.js';
