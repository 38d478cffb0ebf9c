import { say } from '../fit/text.js';
import { refusedFacts } from '../turned/refused-facts.js';
import { refusedJoints } from '../turned/refused-joints.js';
import { refusedStands } from '../turned/refused-stands.js';
import type { Check } from './check.js';

/** Something is said of a turned part, or of a cant, that is not worked out. */
export const turnedOtherwise: Check = {
  code: 'turned-otherwise',
  severity: 'error',
  *run(context) {
    const { solved, spec } = context;
    const turned = new Map(spec.parts.flatMap((part) => (part.on ? [[part.id, part] as const] : [])));
    // A cant is named in no other statement than a joint, and only where there is one.
    if (turned.size === 0 && !spec.statements.some(({ kind }) => kind === 'cant')) return;
    const refused = [
      ...[...turned.values()].flatMap((part) => [...refusedStands(solved, part)]),
      ...refusedJoints(solved, turned),
      ...refusedFacts(solved, turned),
    ];
    for (const { message, cure, source, part, statement } of refused) {
      const declared = context.part(part);
      yield {
        message,
        cure,
        source,
        related: declared ? [{ message: say`${part} is declared here`, source: declared.source }] : [],
        about: { parts: [part], statement },
      };
    }
  },
};
