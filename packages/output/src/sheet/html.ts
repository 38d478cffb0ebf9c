import { type Element, element } from '../drawing/element.js';
import { toSvg } from '../drawing/svg.js';
import type { Mark, Page } from './page.js';

/** Pages as one HTML document, a page of paper each, that prints at its true size from any browser. */
export function sheetsHtml(title: string, pages: readonly Page[]): string {
  const [first] = pages;
  const size = first ? `${first.width}mm ${first.height}mm` : 'A4';
  return [
    '<!doctype html>',
    `<html lang="en"><head><meta charset="utf-8"><title>${escaped(title)}</title><style>`,
    `@page{size:${size};margin:0}html,body{margin:0;background:#fff}svg{display:block;break-after:page}svg:last-child{break-after:auto}`,
    '@media screen{body{background:#bbb}svg{margin:4mm auto;background:#fff}}',
    'text{font-family:Helvetica,Arial,sans-serif;white-space:pre}',
    '</style></head><body>',
    ...pages.map((page) => toSvg(svgOf(page))),
    '</body></html>',
    '',
  ].join('\n');
}

const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

function svgOf({ width, height, title, marks }: Page): Element {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
    },
    element('title', {}, title),
    ...marks.map(markElement),
  );
}

function markElement(mark: Mark): Element {
  if (mark.kind === 'line') {
    const { from, to, width, dash } = mark;
    return element('line', {
      ...{ x1: tidy(from[0]), y1: tidy(from[1]), x2: tidy(to[0]), y2: tidy(to[1]), stroke: '#000' },
      'stroke-width': width,
      'stroke-dasharray': dash === undefined ? undefined : `${dash} ${dash}`,
    });
  }
  if (mark.kind === 'box') {
    const { x, y, width, height, pen, grey } = mark;
    return element('rect', {
      ...{ x: tidy(x), y: tidy(y), width: tidy(width), height: tidy(height), fill: greyOf(grey) },
      stroke: pen > 0 ? '#000' : undefined,
      'stroke-width': pen > 0 ? pen : undefined,
    });
  }
  const { x, y, text, size, bold, align, upright } = mark;
  return element(
    'text',
    {
      ...{ x: tidy(x), y: tidy(y), 'font-size': tidy(size) },
      'font-weight': bold ? 'bold' : undefined,
      'text-anchor': align === 'start' ? undefined : align,
      transform: upright ? `rotate(-90 ${tidy(x)} ${tidy(y)})` : undefined,
    },
    text,
  );
}

const tidy = (mm: number): number => Number(mm.toFixed(3));

/** A share of black as a grey. */
function greyOf(share: number | undefined): string {
  if (share === undefined) return 'none';
  const level = Math.round(255 * (1 - share))
    .toString(16)
    .padStart(2, '0');
  return `#${level}${level}${level}`;
}
