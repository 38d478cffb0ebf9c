import { visible } from '../print/visible.js';
import type { Element } from './element.js';

/** A drawing as the text of an SVG element. Nothing in a name can become markup or move the cursor of a terminal. */
export function toSvg(drawing: Element): string {
  return written({ ...drawing, attributes: { xmlns: 'http://www.w3.org/2000/svg', ...drawing.attributes } });
}

function written({ tag, attributes, children }: Element): string {
  const given = Object.entries(attributes).flatMap(([name, value]) =>
    value === undefined ? [] : [` ${name}="${escaped(figured(value))}"`],
  );
  const open = `<${tag}${given.join('')}`;
  if (children.length === 0) return `${open}/>`;
  const raw = tag === 'style';
  const inner = children.map((child) => (typeof child === 'string' ? (raw ? child : escaped(child)) : written(child)));
  return `${open}>${inner.join('')}</${tag}>`;
}

/** Hundredths of a millimetre of paper are finer than any pen. */
const figured = (value: string | number): string =>
  typeof value === 'number' ? String(Math.round(value * 100) / 100 + 0) : value;

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

const escaped = (words: string): string => visible(words).replace(/[&<>"']/g, (sign) => SIGNS[sign] as string);
