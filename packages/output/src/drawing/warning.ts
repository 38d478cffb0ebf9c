import type { Scene } from './scene.js';

/** What stands over a drawing while it is not to be made from: a drawing of errors looks as sound as any other. */
export function warningLines(scene: Scene): readonly string[] {
  const errors = scene.errors ?? scene.findings.filter(({ severity }) => severity === 'error').length;
  const unplaced = scene.parts.filter(({ box }) => box === undefined).map(({ part }) => part);
  return [
    ...(errors === 0
      ? []
      : [
          `WARNING: ${errors} ${errors === 1 ? 'error was' : 'errors were'} found; do not cut or mill from this drawing.`,
        ]),
    ...(unplaced.length === 0 ? [] : [`Not drawn, since not fixed: ${unplaced.join(', ')}.`]),
  ];
}
