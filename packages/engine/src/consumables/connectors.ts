import type { Fit, FittedJoint } from '../fit/fit.js';
import type { Connector } from '../spec/stock.js';

/** The connectors of one kind that a cabinet takes. */
export interface Counted {
  readonly connector: Connector;
  readonly count: number;
}

/** Both halves of a joint share its connectors, so that one half tells their number. */
export const connectorsIn = ({ connector, halves }: FittedJoint): number =>
  connector ? (halves[0]?.slots.length ?? 0) : 0;

/** Connectors of joints by kind, in the order of their names. */
export function countConnectors({ joints }: Pick<Fit, 'joints'>): readonly Counted[] {
  const counts = new Map<string, Counted>();
  for (const joint of joints) {
    const { connector } = joint;
    const slots = connectorsIn(joint);
    if (connector === undefined || slots === 0) continue;
    counts.set(connector.name, { connector, count: (counts.get(connector.name)?.count ?? 0) + slots });
  }
  return [...counts.values()].sort((a, b) => (a.connector.name < b.connector.name ? -1 : 1));
}
