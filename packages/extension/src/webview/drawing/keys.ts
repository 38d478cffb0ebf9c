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

/** What a key leads to from one of many: the next, the one before, the first or the last. */
export function keyAfter(all: readonly string[], from: string, key: string): string | undefined {
  const at = all.indexOf(from);
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return all[(at + 1) % all.length];
    case 'ArrowLeft':
    case 'ArrowUp':
      return all[(at - 1 + all.length) % all.length];
    case 'Home':
      return all[0];
    case 'End':
      return all.at(-1);
    default:
      return undefined;
  }
}
