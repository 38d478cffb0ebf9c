import type { FitResult, LengthFormat } from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { printText } from '../print/length.js';
import type { GlueUpJson } from './schema.js';
import { glueUpSheet } from './sheet.js';

/** The glue-ups of cabinets as data. */
export function glueUpJson(results: readonly FitResult[], format: LengthFormat): GlueUpJson {
  return {
    format: 'dryfit-glue-up',
    version: 1,
    cabinets: results.map((result) => {
      const { order, steps } = glueUpSheet(result);
      return {
        cabinet: printText(cabinetLabel(result.fit), format),
        steps: steps.map(({ step, words }) => ({
          number: step.number,
          words,
          onto: [...step.onto],
          coming: step.coming.map(({ parts, legs }) => ({
            parts: [...parts],
            legs: legs.map(({ way, length }) => ({ way: [...way], ...(length === undefined ? {} : { mm: length }) })),
          })),
          joints: [...step.joints],
          together: step.together.map((list) => [...list]),
          allMove: step.allMove,
          connectors: step.connectors.map((one) => ({ ...one })),
          clamps: step.clamps.map(({ along, count }) => ({ along: [...along], count })),
        })),
        stuck: order.stuck.map(({ parts, joints, proven }) => ({ parts: [...parts], joints: [...joints], proven })),
        loose: [...order.loose],
        unplaced: [...order.unplaced],
      };
    }),
  };
}
