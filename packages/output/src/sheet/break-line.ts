import type { Frame, Pen, Spot } from './page.js';

/** How high a zigzag of a break line stands out, and how long it is, mm. */
const ZIGZAG = { high: 0.7, long: 2.2 };
/** How far a break line runs out over what it cuts. */
const OVER = 1.2;
const THIN = 0.25;

/**
 * A break in something drawn: white between two thin lines with zigzags (ISO 128-2, continuous narrow line with zigzags),
 * with its word where there is room.
 * @param frame what is cut out of it
 * @param way whether the lines run across the page or down it
 */
export function drawBreak(pen: Pen, { x, y, width, height }: Frame, way: 'across' | 'down', word: boolean): void {
  pen.box(x - 0.5, y, width + 1, height, 0, 0);
  if (way === 'across') {
    for (const at of [y, y + height]) zigzag(pen, [x - OVER, at], [x + width + OVER, at]);
    if (word) pen.text(x + width / 2, y + height / 2 + WORD * 0.35, 'shortened', WORD, { align: 'middle' });
    return;
  }
  for (const at of [x, x + width]) zigzag(pen, [at, y - OVER], [at, y + height + OVER]);
  if (word)
    pen.text(x + width / 2 + WORD * 0.35, y + height / 2, 'shortened', WORD, { align: 'middle', upright: true });
}

const WORD = 2.6;

/** A line with a zigzag at a quarter and at three quarters of it. */
function zigzag(pen: Pen, from: Spot, to: Spot): void {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const spot = (along: number, out: number): Spot => [from[0] + along * ux - out * uy, from[1] + along * uy + out * ux];
  const points: Spot[] = [from];
  for (const share of [0.25, 0.75]) {
    const middle = share * long;
    points.push(
      spot(middle - ZIGZAG.long / 2, 0),
      spot(middle - ZIGZAG.long / 4, ZIGZAG.high),
      spot(middle + ZIGZAG.long / 4, -ZIGZAG.high),
      spot(middle + ZIGZAG.long / 2, 0),
    );
  }
  points.push(to);
  points.slice(1).forEach((end, i) => {
    pen.line(points[i] ?? from, end, THIN);
  });
}
