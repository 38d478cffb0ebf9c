import fc from 'fast-check';

/**
 * Runs of a property of which the first few are the same every time, and the others drawn anew. A test that asks how
 * often something came up is then answered by the fixed ones, and cannot fail by chance.
 */
export const fixedFirst = <Drawn extends [unknown, ...unknown[]]>(
  { fixed, numRuns }: { readonly fixed: number; readonly numRuns: number },
  ...arbitraries: { [K in keyof Drawn]: fc.Arbitrary<Drawn[K]> }
): fc.Parameters<Drawn> => ({
  numRuns,
  examples: fc.sample(fc.tuple<Drawn>(...arbitraries), { seed: 1, numRuns: fixed }),
});
