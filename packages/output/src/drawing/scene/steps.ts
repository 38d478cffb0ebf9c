import type { FitResult } from '@dryfit/engine';
import { glueUpSheet } from '../../glue-up/sheet.js';
import { capital, wayWords } from '../../glue-up/words.js';
import type { SceneStep, Triple } from '../scene.js';

/** The steps of a cabinet's glue-up, to be drawn. */
export function sceneSteps(result: FitResult): readonly SceneStep[] {
  return glueUpSheet(result).steps.map(({ step, words, facts }) => ({
    label: words,
    notes: facts.filter(([name]) => TOLD.includes(name)).map(([name, value]) => `${capital(name)}: ${value}`),
    coming: step.coming.flatMap(({ parts, legs }) => {
      const along = legs.at(-1)?.way ?? ([0, 0, 0] as const);
      return parts.map((part) => ({ part, along: [...along] as unknown as Triple<number>, words: wayWords(along) }));
    }),
    placed: [...step.onto],
  }));
}

/** What of a step stands beside its drawing. */
const TOLD: readonly string[] = ['drawn together', 'connectors', 'clamps', 'glue'];
