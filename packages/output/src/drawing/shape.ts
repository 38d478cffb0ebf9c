import { type Element, element } from './element.js';
import type { Scene, SceneFinding, Shape } from './scene.js';

/** A group a reader can point at, or hear: it carries the id and the words of its shape. */
export function markOf(
  shape: Shape,
  kind: string,
  found: string | undefined,
  children: readonly (Element | string)[],
): Element {
  return element(
    'g',
    {
      class: found === undefined ? kind : `${kind} found ${found}`,
      'data-shape': shape.shape,
      role: 'img',
      'aria-label': shape.label,
    },
    element('title', {}, shape.label),
    ...children,
  );
}

/** The worst that was found about each shape: "error", "warning" or "info". */
export function worstOf(scene: Scene): (shape: string) => SceneFinding['severity'] | undefined {
  const worst = new Map<string, SceneFinding['severity']>();
  const rank = { error: 2, warning: 1, info: 0 } as const;
  for (const { severity, shapes } of scene.findings) {
    for (const shape of shapes) {
      const known = worst.get(shape);
      if (known === undefined || rank[known] < rank[severity]) worst.set(shape, severity);
    }
  }
  return (shape) => worst.get(shape);
}
