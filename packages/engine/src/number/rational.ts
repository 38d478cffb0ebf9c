import { floorDiv, gcd, gcdBig, nearestDouble } from './integers.js';

interface Pair {
  readonly n: bigint;
  readonly d: bigint;
}

/**
 * An exact fraction, always in lowest terms with a positive denominator; equal fractions are structurally
 * equal. Lengths are in millimetres wherever the engine says nothing else. Held as two safe integers while
 * they fit, and as two big integers beyond, so no operation loses anything and none can overflow.
 */
export class Rational {
  static readonly ZERO = new Rational(0, 1, undefined);
  static readonly ONE = new Rational(1, 1, undefined);
  static readonly TWO = new Rational(2, 1, undefined);
  private static readonly MINUS_ONE = new Rational(-1, 1, undefined);

  /** `num` and `den` are the value while `big` is absent, and 0 and 1 otherwise. */
  private constructor(
    private readonly num: number,
    private readonly den: number,
    private readonly big: Pair | undefined,
  ) {}

  /**
   * The fraction n/d of two integers.
   * @throws RangeError if either is not an integer or d is 0. Decimals are read with `parse`, since a float
   * such as 17.7 is not the number it was written as.
   */
  static of(n: number | bigint, d: number | bigint = 1): Rational {
    if (typeof n === 'number' && !Number.isInteger(n)) throw new RangeError(`${n} is not an integer`);
    if (typeof d === 'number' && !Number.isInteger(d)) throw new RangeError(`${d} is not an integer`);
    if (d === 1 && n === 1) return Rational.ONE;
    if (d === 1 && n === -1) return Rational.MINUS_ONE;
    if (Number.isSafeInteger(n) && Number.isSafeInteger(d)) return Rational.small(n as number, d as number);
    return Rational.large(BigInt(n), BigInt(d));
  }

  /**
   * Reads '18', '17.7', '3/4' or '23 1/4', with or without a leading minus (which belongs to the whole of it),
   * digit by digit and never through a float. Anything else, a zero denominator included, is undefined.
   */
  static parse(text: string): Rational | undefined {
    const decimal = /^\s*(-?)(\d+)(?:\.(\d+))?\s*$/.exec(text);
    if (decimal) {
      const [, minus = '', whole = '', places = ''] = decimal;
      return signed(minus, Rational.large(BigInt(whole + places), 10n ** BigInt(places.length)));
    }
    const fraction = /^\s*(-?)(?:(\d+)\s+)?(\d+)\/(\d+)\s*$/.exec(text);
    if (!fraction) return undefined;
    const [, minus = '', whole = '0', n = '', d = ''] = fraction;
    const bottom = BigInt(d);
    if (bottom === 0n) return undefined;
    return signed(minus, Rational.large(BigInt(whole) * bottom + BigInt(n), bottom));
  }

  static sum(list: Iterable<Rational>): Rational {
    let total = Rational.ZERO;
    for (const item of list) total = total.add(item);
    return total;
  }

  static min(first: Rational, ...rest: readonly Rational[]): Rational {
    return rest.reduce((least, item) => (item.lt(least) ? item : least), first);
  }

  static max(first: Rational, ...rest: readonly Rational[]): Rational {
    return rest.reduce((most, item) => (item.gt(most) ? item : most), first);
  }

  get numerator(): bigint {
    return this.big ? this.big.n : BigInt(this.num);
  }

  get denominator(): bigint {
    return this.big ? this.big.d : BigInt(this.den);
  }

  add(b: Rational): Rational {
    if (!this.big && !b.big) {
      // Very many sums begin from nothing, or have nothing to add.
      if (b.num === 0) return this;
      if (this.num === 0) return b;
      if (this.den === b.den) {
        const n = this.num + b.num;
        if (Number.isSafeInteger(n)) return Rational.small(n, this.den);
      } else {
        const left = this.num * b.den;
        const right = b.num * this.den;
        const n = left + right;
        const d = this.den * b.den;
        if (safe(left) && safe(right) && safe(n) && safe(d)) return Rational.small(n, d);
      }
    }
    return Rational.large(
      this.numerator * b.denominator + b.numerator * this.denominator,
      this.denominator * b.denominator,
    );
  }

  sub(b: Rational): Rational {
    if (!this.big && !b.big) {
      if (b.num === 0) return this;
      if (this.den === b.den) {
        const n = this.num - b.num;
        if (safe(n)) return Rational.small(n, this.den);
      } else {
        const left = this.num * b.den;
        const right = b.num * this.den;
        const n = left - right;
        const d = this.den * b.den;
        if (safe(left) && safe(right) && safe(n) && safe(d)) return Rational.small(n, d);
      }
    }
    return this.add(b.neg());
  }

  mul(b: Rational): Rational {
    if (!this.big && !b.big) {
      // Signs and coefficients are mostly one or minus one.
      if (b.den === 1 && b.num === 1) return this;
      if (b.den === 1 && b.num === -1) return this.neg();
      const n = this.num * b.num;
      const d = this.den * b.den;
      if (safe(n) && safe(d)) return Rational.small(n, d);
    }
    return Rational.large(this.numerator * b.numerator, this.denominator * b.denominator);
  }

  /** @throws RangeError if b is zero. */
  div(b: Rational): Rational {
    if (!this.big && !b.big && b.num > 0) {
      if (b.num === b.den) return this;
      const n = this.num * b.den;
      const d = this.den * b.num;
      if (safe(n) && safe(d)) return Rational.small(n, d);
    }
    return this.mul(b.inverse());
  }

  neg(): Rational {
    if (this.big) return Rational.large(-this.big.n, this.big.d);
    return this.num === 0 ? this : new Rational(-this.num, this.den, undefined);
  }

  abs(): Rational {
    return (this.big ? this.big.n < 0n : this.num < 0) ? this.neg() : this;
  }

  /** @throws RangeError if this is zero. */
  inverse(): Rational {
    if (this.isZero()) throw new RangeError('division by zero');
    if (this.big) return Rational.large(this.big.d, this.big.n);
    return this.num < 0 ? new Rational(-this.den, -this.num, undefined) : new Rational(this.den, this.num, undefined);
  }

  compare(b: Rational): -1 | 0 | 1 {
    if (!this.big && !b.big) {
      const same = this.den === b.den;
      const left = same ? this.num : this.num * b.den;
      const right = same ? b.num : b.num * this.den;
      if (safe(left) && safe(right)) return left < right ? -1 : left > right ? 1 : 0;
    }
    return order(this.numerator * b.denominator, b.numerator * this.denominator);
  }

  equals(b: Rational): boolean {
    if (this.big && b.big) return this.big.n === b.big.n && this.big.d === b.big.d;
    return !this.big && !b.big && this.num === b.num && this.den === b.den;
  }

  lt(b: Rational): boolean {
    return this.compare(b) < 0;
  }

  le(b: Rational): boolean {
    return this.compare(b) <= 0;
  }

  gt(b: Rational): boolean {
    return this.compare(b) > 0;
  }

  ge(b: Rational): boolean {
    return this.compare(b) >= 0;
  }

  isZero(): boolean {
    return !this.big && this.num === 0;
  }

  isInteger(): boolean {
    return this.big ? this.big.d === 1n : this.den === 1;
  }

  /** True if the denominator is a power of two, as that of every double is. */
  isBinary(): boolean {
    if (this.big) return (this.big.d & (this.big.d - 1n)) === 0n;
    let d = this.den;
    while (d % 2 === 0) d /= 2;
    return d === 1;
  }

  sign(): -1 | 0 | 1 {
    if (this.big) return order(this.big.n, 0n);
    return this.num < 0 ? -1 : this.num > 0 ? 1 : 0;
  }

  /** The greatest integer not above this. */
  floor(): Rational {
    return this.isInteger() ? this : Rational.large(floorDiv(this.numerator, this.denominator), 1n);
  }

  /** The least integer not below this. */
  ceil(): Rational {
    return this.isInteger() ? this : Rational.large(floorDiv(this.numerator, this.denominator) + 1n, 1n);
  }

  /**
   * The nearest whole multiple of `step`; exactly between two, the upper one (half up: towards plus infinity,
   * so −2.5 to a step of 1 gives −2).
   * @throws RangeError unless step > 0.
   */
  roundTo(step: Rational): Rational {
    if (step.sign() <= 0) throw new RangeError(`a step must be above zero, not ${step}`);
    return this.div(step).add(HALF).floor().mul(step);
  }

  /** The double nearest to this: correctly rounded, ties to even, within the range of normal doubles. */
  toNumber(): number {
    return this.big ? nearestDouble(this.big.n, this.big.d) : this.num / this.den;
  }

  /** 'n/d', or 'n' for an integer; `parse` reads it back. */
  toString(): string {
    if (this.big) return this.big.d === 1n ? `${this.big.n}` : `${this.big.n}/${this.big.d}`;
    return this.den === 1 ? `${this.num}` : `${this.num}/${this.den}`;
  }

  toJSON(): string {
    return this.toString();
  }

  private static small(n: number, d: number): Rational {
    if (d === 1) return new Rational(n + 0, 1, undefined);
    if (d === 0) throw new RangeError('division by zero');
    const common = d < 0 ? -gcd(n, d) : gcd(n, d);
    // Adding 0 turns −0 into 0, so that equal values are structurally equal.
    return new Rational(n / common + 0, d / common, undefined);
  }

  private static large(n: bigint, d: bigint): Rational {
    if (d === 0n) throw new RangeError('division by zero');
    const common = d < 0n ? -gcdBig(n, d) : gcdBig(n, d);
    const top = n / common;
    const bottom = d / common;
    const fits = -MOST <= top && top <= MOST && bottom <= MOST;
    return fits ? new Rational(Number(top), Number(bottom), undefined) : new Rational(0, 1, { n: top, d: bottom });
  }
}

const safe = Number.isSafeInteger;
const MOST = BigInt(Number.MAX_SAFE_INTEGER);
const HALF = Rational.of(1, 2);

function signed(minus: string, value: Rational): Rational {
  return minus === '' ? value : value.neg();
}

function order(a: bigint, b: bigint): -1 | 0 | 1 {
  return a < b ? -1 : a > b ? 1 : 0;
}
