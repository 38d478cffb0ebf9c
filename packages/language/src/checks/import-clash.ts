import { type Finding, say } from '@dryfit/engine';
import { type AstNode, AstUtils, UriUtils } from 'langium';
import { reporter } from '../findings/report.js';
import { type File, isChanges, isGlue, isJig, isLimits, isPose, isTolerances } from '../generated/ast.js';
import { Places } from '../interpret/source.js';
import { isLibrary } from '../library/library.js';
import type { FileCheck } from './file-check.js';

/** Two imported files bring the same thing, and neither knows the other, so that chance decides which is taken. */
export const importClash = reporter('import-clash', 'warning');

const TYPES = ['Material', 'Band', 'Machine', 'Connector', 'Pattern', 'Cabinet'];

export const importClashes: FileCheck = ({ file, places, services }) => {
  const files = services.joinery.Files;
  const last = file.imports.at(-1);
  if (!last || file.imports.length < 2) return [];
  const named = TYPES.flatMap((type) => files.clashes(file, type)).map(({ name, chosen, hidden }) =>
    clash(name, chosen, hidden, `Give one of the two another name, or define ${name} in this file.`),
  );
  return [...named, ...[isJig, isPose, isLimits, isTolerances, isChanges, isGlue].flatMap(wholeShop)];

  /** What a shop has one of, and is not asked for by name. */
  function wholeShop(
    is: typeof isJig | typeof isPose | typeof isLimits | typeof isTolerances | typeof isChanges | typeof isGlue,
  ): Finding[] {
    const owners = files.layers(file).filter((layer) => layer.entries.some((entry) => is(entry)) && !comesAlong(layer));
    const [first, ...others] = owners;
    if (!first || first === file) return [];
    return others
      .filter((other) => !files.layers(first).includes(other))
      .flatMap((other) => {
        const [chosen, hidden] = [first, other].map((owner) => owner.entries.find((entry) => is(entry)));
        const word = chosen?.$type.toLowerCase() ?? '';
        return chosen && hidden ? [clash(`the ${word}`, chosen, hidden, `Describe the ${word} in this file.`)] : [];
      });
  }

  function clash(name: string, chosen: AstNode, hidden: AstNode, cure: string): Finding {
    return importClash({
      source: last ? places.property(last, 'path') : places.of(file),
      message: say`${name} of ${fileName(chosen)} and of ${fileName(hidden)} are both imported; the first is taken`,
      cure: say`${cure}`,
      related: [chosen, hidden].map((node) => ({
        message: say`${name} of ${fileName(node)}`,
        source: new Places(node).property(node, 'name'),
      })),
    });
  }
};

/** The built-in library gives way to whatever is written. */
const comesAlong = (file: File): boolean => file.$document !== undefined && isLibrary(file.$document.uri);

const fileName = (node: AstNode): string => {
  const uri = AstUtils.findRootNode(node).$document?.uri;
  return uri ? UriUtils.basename(uri) : 'this file';
};
