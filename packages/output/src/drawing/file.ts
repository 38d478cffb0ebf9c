import { type Element, element } from './element.js';
import { printedStyle } from './style.js';
import { toSvg } from './svg.js';

/** A drawing as a file of its own: black on white, with its style, and a size to print at. */
export function svgFile(drawing: Element): string {
  const [, , width = '960', height = '640'] = String(drawing.attributes.viewBox ?? '').split(' ');
  const ground = element('rect', { class: 'ground', width, height, fill: '#fff' });
  const [title, ...rest] = drawing.children;
  const dressed: Element = {
    ...drawing,
    attributes: { ...drawing.attributes, width, height },
    children: [...(title === undefined ? [] : [title]), element('style', {}, printedStyle), ground, ...rest],
  };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${toSvg(dressed)}\n`;
}
