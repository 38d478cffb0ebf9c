import type { DrawnFile, TextPlace } from '@dryfit/language/protocol';
import type { Lit } from './messages.js';

/** A place of the cursor, as editors count. */
export interface At {
  readonly line: number;
  readonly character: number;
}

/** The shapes of each cabinet that a place of a text belongs to, by the cabinet's title; cabinets without any are left out. */
export function litBy({ cabinets }: Pick<DrawnFile, 'cabinets'>, uri: string, at: At): Readonly<Record<string, Lit>> {
  const all: Record<string, Lit> = {};
  for (const { scene, places } of cabinets) {
    const lit: Record<string, 'given' | 'named'> = {};
    for (const [shape, [first, ...others]] of Object.entries(places)) {
      if (first && holds(first, uri, at)) lit[shape] = 'given';
      else if (others.some((place) => holds(place, uri, at))) lit[shape] = 'named';
    }
    if (Object.keys(lit).length > 0) all[scene.title] = lit;
  }
  return all;
}

/** True if the cursor is in a place or at either of its ends. */
export function holds({ uri, range: { start, end } }: TextPlace, cursorUri: string, at: At): boolean {
  return uri === cursorUri && !before(at, start) && !before(end, at);
}

/** True if what is drawn has to do with a text. */
export function drawsOn({ cabinets }: Pick<DrawnFile, 'cabinets'>, uri: string): boolean {
  return cabinets.some(({ places }) => Object.values(places).some((all) => all.some((place) => place.uri === uri)));
}

/** Which of its places a shape leads to when it is chosen once more: each in turn. */
export class Turns {
  private last: { readonly key: string; readonly index: number } | undefined;

  next(key: string, places: number): number {
    const index = this.last?.key === key ? (this.last.index + 1) % Math.max(1, places) : 0;
    this.last = { key, index };
    return index;
  }

  /** One was chosen out of turn; the next is the one after it. */
  set(key: string, index: number): void {
    this.last = { key, index };
  }
}

const before = (a: At, b: At): boolean => a.line < b.line || (a.line === b.line && a.character < b.character);
