import type { Element, Scene, Shape } from '@dryfit/output';

/** What is drawn under an id. */
export function shapeIn(scene: Scene, shape: string): Shape | undefined {
  for (const part of scene.parts) {
    if (part.shape === shape) return part;
    const cut = [...part.cuts, ...(part.along ?? [])].find((one) => one.shape === shape);
    if (cut) return cut;
  }
  return [...scene.joints, ...(scene.marks ?? [])].find((one) => one.shape === shape);
}

/** Something in a drawing that keys can go to: a shape, or a name beside the picture that leads to one. */
export interface Target {
  /** Unique in its drawing. */
  readonly key: string;
  readonly shape: string;
}

/** Every shape of a drawing in its order, each once; then the names. */
export function targetsIn(element: Element): readonly Target[] {
  const shapes = new Map<string, Target>();
  const names: Target[] = [];
  const look = (one: Element | string) => {
    if (typeof one === 'string') return;
    const target = targetOf(one.attributes);
    if (target !== undefined && target.key === target.shape) shapes.set(target.key, target);
    else if (target !== undefined) names.push(target);
    one.children.forEach(look);
  };
  look(element);
  return [...shapes.values(), ...names];
}

/** What an element of a drawing leads to when it is chosen by keys. */
export function targetOf(attributes: Element['attributes']): Target | undefined {
  const { 'data-shape': shape, 'data-names': named } = attributes;
  if (shape !== undefined) return { key: String(shape), shape: String(shape) };
  return named === undefined ? undefined : { key: `name of ${named}`, shape: String(named) };
}

/** Every shape of a drawing in its order, each once. */
export const shapesIn = (element: Element): readonly string[] =>
  targetsIn(element).flatMap(({ key, shape }) => (key === shape ? [shape] : []));

/** The shapes of the parts that are named beside a drawing. */
export const namedIn = (element: Element): readonly string[] =>
  targetsIn(element).flatMap(({ key, shape }) => (key === shape ? [] : [shape]));
