import type { Element } from '@dryfit/output';
import type { Frame } from './state.js';

/** Left, top, width and height in the drawing's own measure. */
export type Box = readonly [left: number, top: number, width: number, height: number];

/** What a drawing takes up, as it says itself. */
export function boxOf({ attributes }: Element): Box {
  const numbers = String(attributes.viewBox ?? '')
    .split(/[\s,]+/)
    .map(Number);
  const [left = 0, top = 0, width = 100, height = 100] = numbers.every(Number.isFinite) ? numbers : [];
  return [left, top, width, height];
}

/** The part of a drawing that a frame shows, as a viewBox. */
export function seen([left, top, width, height]: Box, { zoom, x, y }: Frame): string {
  const [wide, high] = [width / zoom, height / zoom];
  return [left + x * width - wide / 2, top + y * height - high / 2, wide, high]
    .map((number) => Math.round(number * 1000) / 1000)
    .join(' ');
}
