import { reporter } from '../findings/report.js';

/** A material whose layers are, in the end, itself. */
export const layerCycle = reporter('layer-cycle', 'error');
