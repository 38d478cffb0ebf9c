import type { Element, Scene, Shape } from '@dryfit/output';

/** What is drawn under an id. */
export function shapeIn(scene: Scene, shape: string): Shape | undefined {
  for (const part of scene.parts) {
    if (part.shape === shape) return part;
    const cut = part.cuts.find((one) => one.shape === shape);
    if (cut) return cut;
  }
  return scene.joints.find((joint) => joint.shape === shape);
}

/** Every shape of a drawing in its order, each once. */
export function shapesIn(element: Element): readonly string[] {
  const found = new Set<string>();
  const look = (one: Element | string) => {
    if (typeof one === 'string') return;
    const shape = one.attributes['data-shape'];
    if (shape !== undefined) found.add(String(shape));
    one.children.forEach(look);
  };
  look(element);
  return [...found];
}
