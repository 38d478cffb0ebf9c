import { type Element, element } from '../element.js';
import type { Flat } from '../exploded/view.js';

/** A rectangle on paper. */
export interface Patch {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const TEXT = 14;
/** Least distance from one line of text to the next. */
export const LINE = 17;
// Wider than the letters of the usual sans serif fonts are on average, so that what is kept clear is clear.
const LETTER = 0.57;

export const textWidth = (words: string, size = TEXT): number => [...words].length * size * LETTER;

export interface Lettering {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly size?: number;
  readonly kind?: string;
  /** Turned to be read from the right. */
  readonly upward?: boolean;
  /** On a ground of paper, so that lines it stands on do not run through it. */
  readonly clear?: boolean;
}

/** What has been drawn so far, and how much paper it takes. */
export class Ink {
  private readonly lines: Element[] = [];
  // Words come last, so that no line runs through them.
  private readonly words: Element[] = [];
  private readonly patches: Patch[] = [];
  private readonly over: Element[] = [];
  private extent: Patch | undefined;

  add(...elements: readonly Element[]): void {
    this.lines.push(...elements);
  }

  /** Over everything, the words as well. */
  onTop(...elements: readonly Element[]): void {
    this.over.push(...elements);
  }

  /** Paper that words stand on. */
  get written(): readonly Patch[] {
    return this.patches;
  }

  get drawn(): readonly Element[] {
    return [...this.lines, ...this.words, ...this.over];
  }

  /** Paper that is taken. */
  take(patch: Patch): void {
    const known = this.extent ?? patch;
    this.extent = {
      left: Math.min(known.left, patch.left),
      top: Math.min(known.top, patch.top),
      right: Math.max(known.right, patch.right),
      bottom: Math.max(known.bottom, patch.bottom),
    };
  }

  get taken(): Patch {
    return this.extent ?? { left: 0, top: 0, right: 0, bottom: 0 };
  }

  path(kind: string, ...strokes: readonly (readonly Flat[])[]): void {
    this.add(pathOf(kind, ...strokes));
  }

  text(
    words: string,
    [x, y]: Flat,
    { anchor = 'start', size = TEXT, kind, upward = false, clear = false }: Lettering = {},
  ): void {
    const long = textWidth(words, size);
    const start = anchor === 'start' ? 0 : anchor === 'middle' ? -long / 2 : -long;
    const patch = upward
      ? { left: x - size * 0.8, right: x + size * 0.25, top: y - start - long, bottom: y - start }
      : { left: x + start, right: x + start + long, top: y - size * 0.8, bottom: y + size * 0.25 };
    this.take(patch);
    this.patches.push(patch);
    if (clear) this.words.push(rectOf('ground', patch));
    this.words.push(
      element(
        'text',
        {
          class: kind,
          x,
          y,
          'font-size': size === TEXT ? undefined : size,
          'text-anchor': anchor === 'start' ? undefined : anchor,
          transform: upward ? `rotate(-90 ${round(x)} ${round(y)})` : undefined,
        },
        words,
      ),
    );
  }
}

/** Paper that the words of elements stand on; words that are turned are not among them. */
export function wordsIn(elements: readonly (Element | string)[]): readonly Patch[] {
  return elements.flatMap((one) => {
    if (typeof one === 'string') return [];
    const {
      x,
      y,
      'font-size': size = one.attributes.class === 'title' ? 18 : TEXT,
      'text-anchor': anchor,
    } = one.attributes;
    if (one.tag !== 'text') return wordsIn(one.children);
    const long = textWidth(one.children.join(''), Number(size));
    const left = Number(x) - (anchor === 'end' ? long : anchor === 'middle' ? long / 2 : 0);
    return [{ left, right: left + long, top: Number(y) - Number(size) * 0.8, bottom: Number(y) + Number(size) * 0.25 }];
  });
}

export const round = (n: number): string => String(Math.round(n * 100) / 100 + 0);

export const pathOf = (kind: string, ...strokes: readonly (readonly Flat[])[]): Element =>
  element('path', {
    class: kind,
    d: strokes.map((points) => `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}`).join(''),
  });

export const rectOf = (kind: string, { left, top, right, bottom }: Patch): Element =>
  element('rect', { class: kind, x: left, y: top, width: right - left, height: bottom - top });

export const patchOf = (points: readonly Flat[]): Patch => ({
  left: Math.min(...points.map(([x]) => x)),
  right: Math.max(...points.map(([x]) => x)),
  top: Math.min(...points.map(([, y]) => y)),
  bottom: Math.max(...points.map(([, y]) => y)),
});
