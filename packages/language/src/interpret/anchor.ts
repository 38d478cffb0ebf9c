import type { Source } from '@dryfit/engine';

type Movable = { -readonly [K in keyof Source]: Source[K] };

/** A place in a text that moves along with the stretch it belongs to. */
class Anchored implements Source {
  uri: string;
  start: number;
  end: number;
  /** Private, so that what compares, copies or prints places sees the three figures and nothing else. */
  readonly #anchor: Anchor;

  constructor(anchor: Anchor, uri: string, start: number, end: number) {
    this.uri = uri;
    this.start = start;
    this.end = end;
    this.#anchor = anchor;
  }

  static anchorOf(source: Source): Anchor | undefined {
    return source instanceof Anchored ? source.#anchor : undefined;
  }
}

/**
 * A stretch of a text, such as a cabinet, that is moved as a whole when something above it is edited. Every place made
 * here moves with it, so that what was worked out from the stretch is as good as new wherever it stands.
 */
export class Anchor {
  private readonly places: Anchored[] = [];

  /** `offset` is where the stretch starts. */
  constructor(private at: number) {}

  get offset(): number {
    return this.at;
  }

  place(uri: string, start: number, end: number): Source {
    const place = new Anchored(this, uri, start, end);
    this.places.push(place);
    return place;
  }

  /** Moves all places by as much as the stretch has moved. */
  moveTo(offset: number): void {
    const by = offset - this.at;
    if (by === 0) return;
    this.at = offset;
    for (const place of this.places) {
      place.start += by;
      place.end += by;
    }
  }
}

/** The stretch that a place belongs to, if it was made by one. */
export const anchorOf = (source: Source): Anchor | undefined => Anchored.anchorOf(source);

/** Puts a place where another one is: both stand for the same thing, read again from a later text. */
export function follow(place: Source | undefined, now: Source | undefined): void {
  if (place && now) Object.assign(place as Movable, { uri: now.uri, start: now.start, end: now.end });
}
