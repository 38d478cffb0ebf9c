/**
 * A drawing as data: a tree of SVG elements. One renderer writes it as a file, another puts it on a screen; neither
 * knows what is drawn.
 */
export interface Element {
  readonly tag: string;
  /** Attributes by their SVG names; an undefined one is left out. */
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly children: readonly (Element | string)[];
}

export function element(
  tag: string,
  attributes: Element['attributes'] = {},
  ...children: readonly (Element | string)[]
): Element {
  return { tag, attributes, children };
}
