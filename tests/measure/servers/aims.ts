/** What one server took on the whole; ms, and MB of memory. */
export interface Measured {
  /** From the start of the process until it has said what it can do. */
  readonly start: number;
  readonly open: number;
  readonly key: number;
  /** A key that 95 of 100 are no slower than. */
  readonly slowKey: number;
  readonly processor: number;
  readonly burst: number;
  readonly hover: number;
  readonly hoverAfter: number;
  readonly completion: number;
  readonly memory: number;
}

/** A ratio that is to be no more than a figure. */
export interface Aim {
  readonly what: string;
  readonly ratio: number;
  readonly least: number;
}

const AHEAD = ['open', 'key', 'hover', 'completion'] as const;
const PEERS = ['yaml-language-server', '@prisma/language-server'] as const;

export function aimsOf(
  measured: ReadonlyMap<string, Measured>,
  hub: { readonly bare: number; readonly dryfit: number },
  sizes: readonly number[],
  files: number,
): readonly Aim[] {
  const of = (name: string): Measured => {
    const one = measured.get(name);
    if (!one) throw new Error(`${name} was not measured`);
    return one;
  };
  const [small = 0] = sizes;
  return [
    ...sizes.flatMap((size) =>
      PEERS.flatMap((peer) =>
        AHEAD.map((what) => ({
          what: `${what} at ${size}, beside ${peer}`,
          ratio: of(`Dryfit, ${size}`)[what] / of(`${peer}, ${size}`)[what],
          least: 1,
        })),
      ),
    ),
    ...sizes.map((size) => ({
      what: `memory at ${size}, beside joinery off`,
      ratio: of(`Dryfit, ${size}`).memory / of(`Dryfit, joinery off, ${size}`).memory,
      least: 1.5,
    })),
    {
      what: `a key where ${files} files have ${small} each, beside one file`,
      ratio: of(`Dryfit, ${files} × ${small}`).key / of(`Dryfit, 1 × ${small}`).key,
      least: 1.5,
    },
    { what: 'a shop edited, the open file, beside bare Langium', ratio: hub.dryfit / hub.bare, least: 0.33 },
  ];
}

export function quantile(list: readonly number[], part: number): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NaN;
}

export const median = (list: readonly number[]): number => quantile(list, 0.5);
