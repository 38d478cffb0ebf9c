import type { Shop } from './stock.js';

/**
 * A shop with some of its entries exchanged, as plain data: one whose entries are read when they are asked for cannot be
 * copied by spreading it.
 */
export function withEntries(shop: Shop, changed: Partial<Shop>): Shop {
  const { materials, bands, machines, connectors, patterns, jig, pose, limits, tolerances, changes, glue } = shop;
  const entries = { materials, bands, machines, connectors, patterns, jig, pose, limits, tolerances, changes, glue };
  return { ...(entries satisfies Record<keyof Shop, unknown>), ...changed };
}
