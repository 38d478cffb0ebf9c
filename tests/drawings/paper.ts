import { SaxesParser } from 'saxes';

/** An element of a drawing read back from its text, with the shift of all the groups it lies in. */
export interface Read {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Read[];
  text: string;
  readonly dx: number;
  readonly dy: number;
  readonly parent: Read | undefined;
}

/** Reads a drawing by the rules of XML. Throws where it breaks one. */
export function read(svg: string): Read {
  const parser = new SaxesParser();
  const stack: Read[] = [];
  let root: Read | undefined;
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const parent = stack.at(-1);
    const [, x = '0', y = '0'] = /^translate\((-?[\d.]+) (-?[\d.]+)\)$/.exec(String(attributes.transform ?? '')) ?? [];
    const element: Read = {
      tag: name,
      attributes: attributes as Record<string, string>,
      children: [],
      text: '',
      dx: (parent?.dx ?? 0) + Number(x),
      dy: (parent?.dy ?? 0) + Number(y),
      parent,
    };
    parent?.children.push(element);
    root ??= element;
    stack.push(element);
  });
  parser.on('text', (words) => {
    const at = stack.at(-1);
    if (at) at.text += words;
  });
  parser.on('closetag', () => {
    stack.pop();
  });
  parser.write(svg).close();
  if (!root) throw new Error('there is no element');
  return root;
}

export const all = (element: Read): readonly Read[] => [element, ...element.children.flatMap(all)];

export const hasClass = ({ attributes }: Read, name: string): boolean =>
  (attributes.class ?? '').split(' ').includes(name);

export const shapesIn = (element: Read): readonly string[] =>
  all(element).flatMap(({ attributes }) => attributes['data-shape'] ?? []);

export interface Patch {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The paper a rectangle, polygon or path of straight strokes covers. */
export function patchOf(element: Read): Patch {
  const { tag, attributes, dx, dy } = element;
  const n = (name: string) => Number(attributes[name] ?? 0);
  if (tag === 'rect')
    return { left: n('x') + dx, top: n('y') + dy, right: n('x') + n('width') + dx, bottom: n('y') + n('height') + dy };
  const numbers = (attributes.points ?? attributes.d ?? '').match(/-?\d+(\.\d+)?/g)?.map(Number) ?? [];
  const xs = numbers.filter((_, i) => i % 2 === 0).map((x) => x + dx);
  const ys = numbers.filter((_, i) => i % 2 === 1).map((y) => y + dy);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

const SIZES: readonly (readonly [name: string, size: number])[] = [
  ['title', 18],
  ['heading', 16],
];

// Half of the height is a generous width for a letter of the usual sans serif fonts, which are narrower on average.
const LETTER = 0.55;

/** Paper that words cover, by a generous estimate. */
export function wordsPatch(element: Read): Patch {
  const { attributes, dx, dy, text } = element;
  const size = Number(attributes['font-size'] ?? SIZES.find(([name]) => hasClass(element, name))?.[1] ?? 14);
  const long = [...text].length * size * LETTER;
  const [x, y] = [Number(attributes.x) + dx, Number(attributes.y) + dy];
  const start = { start: 0, middle: -long / 2, end: -long }[attributes['text-anchor'] ?? 'start'] ?? 0;
  return /^rotate\(-90/.test(attributes.transform ?? '')
    ? { left: x - size * 0.75, right: x + size * 0.2, top: y - start - long, bottom: y - start }
    : { left: x + start, right: x + start + long, top: y - size * 0.75, bottom: y + size * 0.2 };
}

export const cross = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
