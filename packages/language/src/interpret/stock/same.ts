import type { Source } from '@dryfit/engine';
import { follow } from '../anchor.js';

/**
 * The entry read before, if it says the same as the one read now; its places are then brought to where they are now.
 * Entries are plain data: texts, exact numbers, lists and records of these.
 */
export function sameEntry<T extends object>(now: T, before: T | undefined): T {
  if (before === undefined || !same(now, before)) return now;
  followAll(before as Record<string, unknown>, now as Record<string, unknown>);
  return before;
}

function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (!isRecord(a) || !isRecord(b)) return false;
  if (isSource(a) && isSource(b)) return true;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => same(a[key], b[key]));
}

/** Puts the places in data where they are in other data of the same shape. */
function followAll(data: Record<string, unknown>, now: Record<string, unknown>): void {
  for (const [key, value] of Object.entries(data)) {
    const other = now[key];
    if (!isRecord(value) || !isRecord(other)) continue;
    if (isSource(value) && isSource(other)) follow(value, other);
    else followAll(value, other);
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const isSource = (value: object): value is Source => 'uri' in value && 'start' in value && 'end' in value;
