import { consumablesOf, type LengthFormat, type Need, type Rational } from '@dryfit/engine';
import type { Batch } from '../batch.js';
import { exact } from '../fit-json/lengths.js';
import { printText } from '../print/length.js';
import type { ConsumablesJson } from './schema.js';

/** What a job uses up as data, nothing rounded that the tables do not round, as the published schema (version 1) describes it. */
export function consumablesJson({ errors, items, title }: Batch, format: LengthFormat): ConsumablesJson {
  const { bands, connectors, glue } = consumablesOf(items);
  return {
    format: 'dryfit-consumables',
    version: 1,
    title: printText(title, format),
    errors,
    connectors: connectors.map((need) => ({
      name: need.connector.name,
      shape: need.connector.shape,
      ...needJson(need),
    })),
    bands: bands.map((need) => ({
      name: need.band.name,
      thickness: exact(need.band.thickness.value),
      pieces: need.pieces,
      ...needJson(need),
    })),
    ...(glue
      ? {
          glue: {
            name: glue.glue?.name ?? 'glue',
            spread: glue.spread.toNumber(),
            written: glue.glue !== undefined,
            areas: {
              faces: glue.areas.faces.toNumber(),
              connectors: glue.areas.connectors.toNumber(),
              layers: glue.areas.layers.toNumber(),
            },
            ...needJson(glue),
          },
        }
      : {}),
  };
}

function needJson({ buy, inAll, needed, share, spare }: Need) {
  return {
    needed: amount(needed),
    spare: amount(spare),
    share: { of: share.of.toNumber(), written: share.written },
    inAll: amount(inAll),
    ...(buy
      ? {
          buy: {
            packs: buy.packs.map(({ count, pack }) => ({ size: amount(pack.size), text: pack.text, count })),
            holds: amount(buy.holds),
            over: amount(buy.over),
            proven: buy.proven,
          },
        }
      : {}),
  };
}

const amount = (value: Rational) => ({ exact: value.toString(), value: value.toNumber() });
