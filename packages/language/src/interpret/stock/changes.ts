import { type Changes, type Finding, say, USUAL_CHANGES } from '@dryfit/engine';
import type { Changes as ChangesNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { plainNumber } from '../figure.js';
import { Settings } from '../settings.js';

/** What can be timed, in the order in which it stands on a plan. */
const TIMED = ['machine', 'depth', 'base', 'pose', 'pattern', 'spacer', 'stop', 'load', 'slot'] as const;

/** Minutes that changes take at this bench; what is not written is as the language has it. */
export function readChanges(node: ChangesNode, unit: Unit, report: (finding: Finding) => void): Changes {
  const settings = new Settings(node, 'the changes', unit, report);
  const changes: { -readonly [K in keyof Changes]: Changes[K] } = {
    ...USUAL_CHANGES,
    source: settings.places.of(node),
  };
  const written: string[] = [];
  for (const what of TIMED) {
    const text = settings.one(node[what], what, what);
    if (text === undefined) continue;
    const value = plainNumber(text);
    if (value && value.sign() >= 0) {
      changes[what] = value;
      written.push(what);
      continue;
    }
    settings.wrong(
      node,
      say`the time for ${what} is a figure in minutes, 0 or more, and ${text} is none`,
      say`Write it as a plain number, as in ${what} 2 min.`,
    );
  }
  return { ...changes, written };
}
