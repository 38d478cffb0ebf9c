import type { Bounded, Rational } from '@dryfit/engine';

/** An exact length as fit.json writes it. */
export function exact(length: Rational): { exact: string; mm: number } {
  return { exact: length.toString(), mm: length.toNumber() };
}

/** The same where it may be unknown; undefined stays undefined. */
export function maybe(length: Rational | undefined): { exact: string; mm: number } | undefined {
  return length && exact(length);
}

export function approximate(length: Bounded): { mm: number; error: number } {
  return { mm: length.value, error: length.error };
}

/** An object without its undefined members, so that what is unknown is absent. */
export function known<T extends object>(members: T): T {
  return Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined)) as T;
}
