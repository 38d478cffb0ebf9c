/** Below this a figure of the tableau is nothing. */
const NOTHING = 1e-9;

/**
 * A largest value of objective · x, x of any sign, with rows · x ≤ limits, where every limit is ≥ 0, so that x = 0 is
 * a start; undefined where it has no end. Dantzig's simplex method on a dense tableau with Bland's rule, which never
 * goes in circles; for a few dozen unknowns.
 */
export function largest(
  objective: readonly number[],
  rows: readonly (readonly number[])[],
  limits: readonly number[],
): readonly number[] | undefined {
  const [n, m] = [objective.length, rows.length];
  // A free unknown is the difference of two that are not negative; then one slack a row, then the limit.
  const width = 2 * n + m + 1;
  const tableau = rows.map((row, i) => {
    const line = new Float64Array(width);
    row.forEach((k, j) => {
      line[j] = k;
      line[n + j] = -k;
    });
    line[2 * n + i] = 1;
    line[width - 1] = limits[i] ?? 0;
    return line;
  });
  const gain = new Float64Array(width);
  objective.forEach((k, j) => {
    gain[j] = k;
    gain[n + j] = -k;
  });
  const basis = rows.map((_, i) => 2 * n + i);
  for (;;) {
    let column = 0;
    while (column < width - 1 && (gain[column] as number) <= NOTHING) column++;
    if (column === width - 1) break;
    const row = leaving(tableau, basis, column);
    if (row === undefined) return undefined;
    pivot(tableau, gain, row, column);
    basis[row] = column;
  }
  const x = new Array<number>(2 * n).fill(0);
  basis.forEach((column, i) => {
    if (column < 2 * n) x[column] = tableau[i]?.[width - 1] as number;
  });
  return objective.map((_, j) => (x[j] as number) - (x[n + j] as number));
}

/** The row that runs out first; of several, that of the lowest unknown. */
function leaving(tableau: readonly Float64Array[], basis: readonly number[], column: number): number | undefined {
  let best: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  tableau.forEach((line, i) => {
    const k = line[column] as number;
    if (k <= NOTHING) return;
    const ratio = (line[line.length - 1] as number) / k;
    const tie = best !== undefined && Math.abs(ratio - least) <= NOTHING;
    if (tie ? (basis[i] as number) < (basis[best as number] as number) : ratio < least) {
      best = i;
      least = ratio;
    }
  });
  return best;
}

function pivot(tableau: readonly Float64Array[], gain: Float64Array, row: number, column: number): void {
  const line = tableau[row] as Float64Array;
  const by = line[column] as number;
  // Most of a line is nothing: each part touches few others.
  const filled: number[] = [];
  for (let j = 0; j < line.length; j++) {
    if (line[j] === 0) continue;
    line[j] = (line[j] as number) / by;
    filled.push(j);
  }
  const take = (other: Float64Array): void => {
    const k = other[column] as number;
    if (k === 0 || other === line) return;
    for (const j of filled) other[j] = (other[j] as number) - k * (line[j] as number);
  };
  for (const other of tableau) take(other);
  take(gain);
}
