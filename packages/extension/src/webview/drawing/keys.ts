import type { Act, View } from './state.js';

/** What a key does on the drawing as a whole; undefined for one that does nothing there. */
export function keyOn(key: { readonly key: string; readonly shiftKey: boolean }, view: View): Act | undefined {
  const whole = view.shows === 'cabinet';
  switch (key.key) {
    case '+':
    case '=':
      return { do: 'zoom', by: 1.25 };
    case '-':
    case '_':
      return { do: 'zoom', by: 0.8 };
    case '0':
      return { do: 'whole' };
    case 'ArrowLeft':
      return key.shiftKey && whole ? { do: 'turn', turn: -10, tilt: 0 } : { do: 'move', x: -0.1, y: 0 };
    case 'ArrowRight':
      return key.shiftKey && whole ? { do: 'turn', turn: 10, tilt: 0 } : { do: 'move', x: 0.1, y: 0 };
    case 'ArrowUp':
      return key.shiftKey && whole ? { do: 'turn', turn: 0, tilt: 10 } : { do: 'move', x: 0, y: -0.1 };
    case 'ArrowDown':
      return key.shiftKey && whole ? { do: 'turn', turn: 0, tilt: -10 } : { do: 'move', x: 0, y: 0.1 };
    case '<':
    case ',':
      return whole ? { do: 'pull', apart: view.stance.apart - 0.1 } : undefined;
    case '>':
    case '.':
      return whole ? { do: 'pull', apart: view.stance.apart + 0.1 } : undefined;
    default:
      return undefined;
  }
}

/** The shape that a key leads to from another: the next, the one before, the first or the last. */
export function shapeAfter(shapes: readonly string[], shape: string, key: string): string | undefined {
  const at = shapes.indexOf(shape);
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return shapes[(at + 1) % shapes.length];
    case 'ArrowLeft':
    case 'ArrowUp':
      return shapes[(at - 1 + shapes.length) % shapes.length];
    case 'Home':
      return shapes[0];
    case 'End':
      return shapes.at(-1);
    default:
      return undefined;
  }
}
