/** A length drawn shorter than it is: which stretches of it are drawn to scale, and where the breaks between them stand. */
export interface Shortened {
  /** Where a place lies in the drawing, mm from its beginning; a place within a break lies in proportion. */
  at(place: number): number;
  /** The stretches that are drawn to scale, mm in the drawing. */
  readonly kept: readonly Stretch[];
  /** The breaks between them, mm in the drawing; none where all is drawn. */
  readonly breaks: readonly Stretch[];
}

export type Stretch = readonly [from: number, to: number];

/** How much of a drawing a break takes, mm: the first one has its word in it. */
export const BREAK = 3.4;
const SECOND = 1.8;
/** Least distance from what must be seen to a break, mm. */
const CLEAR = 4;

/**
 * Shortens a length for a drawing, as technical drawings do with the plain middle of long things (interrupted views, ISO
 * 128-3): both ends stay, and what is around a place that must be seen.
 * @param whole all of it to scale, mm in the drawing
 * @param room what there is for it
 * @param seen the place that must be seen, mm in the drawing to scale
 * @param end how much is kept of an end that is away from that place
 */
export function shortened(whole: number, room: number, seen: number, end: number): Shortened {
  // What the room was made for fills it but for what adding up has rounded.
  if (whole <= room + 1e-6) return pieced([[0, whole]]);
  const main = room - BREAK - end;
  if (seen + CLEAR <= main)
    return pieced([
      [0, main],
      [whole - end, whole],
    ]);
  if (whole - seen + CLEAR <= main)
    return pieced([
      [0, end],
      [whole - main, whole],
    ]);
  const middle = room - BREAK - SECOND - 2 * end;
  // What stands about the place wants room on its inner side.
  const from = Math.min(Math.max(seen - middle * SHARE, end), whole - end - middle);
  return pieced([
    [0, end],
    [from, from + middle],
    [whole - end, whole],
  ]);
}

/** How much of what is kept about a place lies before it. */
const SHARE = 0.43;

function pieced(stretches: readonly Stretch[]): Shortened {
  const kept: Stretch[] = [];
  const breaks: Stretch[] = [];
  let y = 0;
  stretches.forEach(([from, to], i) => {
    if (i > 0) {
      const wide = i === 1 ? BREAK : SECOND;
      breaks.push([y, y + wide]);
      y += wide;
    }
    kept.push([y, y + to - from]);
    y += to - from;
  });
  const at = (place: number): number => {
    for (const [i, [from, to]] of stretches.entries()) {
      const [drawn] = kept[i] ?? [0];
      if (place <= to) {
        if (place >= from || i === 0) return drawn + place - from;
        const [, before] = stretches[i - 1] ?? [0, 0];
        const [start, end] = breaks[i - 1] ?? [drawn, drawn];
        return end - (end - start) * ((from - place) / (from - before));
      }
    }
    return y;
  };
  return { at, kept, breaks };
}
