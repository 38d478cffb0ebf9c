/** Greatest common divisor of two safe integers, ≥ 0. */
export function gcd(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  while (y !== 0) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
}

/** Greatest common divisor of two big integers, ≥ 0. */
export function gcdBig(a: bigint, b: bigint): bigint {
  let x = a < 0n ? -a : a;
  let y = b < 0n ? -b : b;
  while (y !== 0n) {
    const rest = x % y;
    x = y;
    y = rest;
  }
  return x;
}

/** Integer division rounding towards minus infinity; d > 0. */
export function floorDiv(n: bigint, d: bigint): bigint {
  const q = n / d;
  return n % d < 0n ? q - 1n : q;
}

/**
 * The double nearest to n/d (ties to even), d > 0. A quotient with at least 65 significant bits is formed
 * whose last bit stands for everything cut off, so that the one rounding is that of Number(bigint). Outside
 * the normal range of doubles the scaling rounds once more.
 */
export function nearestDouble(n: bigint, d: bigint): number {
  const magnitude = n < 0n ? -n : n;
  const shift = 65 + bits(d) - bits(magnitude);
  const top = shift > 0 ? magnitude << BigInt(shift) : magnitude;
  const bottom = shift < 0 ? d << BigInt(-shift) : d;
  let q = top / bottom;
  if (q * bottom !== top) q |= 1n;
  const half = Math.trunc(shift / 2);
  const x = Number(q) * 2 ** -half * 2 ** -(shift - half);
  return n < 0n ? -x : x;
}

function bits(n: bigint): number {
  return n.toString(16).length * 4;
}
