import { type Element, element } from '../element.js';
import type { Scene } from '../scene.js';

/** One part with everything cut into it, square on and dimensioned. */
export function elevation(scene: Scene, part: string): Element {
  const found = scene.parts.find((one) => one.part === part);
  return element('svg', {
    class: 'dryfit-drawing elevation',
    viewBox: '0 0 960 640',
    role: 'group',
    'aria-label': found?.label ?? part,
  });
}
