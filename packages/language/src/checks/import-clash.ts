import { say } from '@dryfit/engine';
import { AstUtils, UriUtils } from 'langium';
import { reporter } from '../findings/report.js';
import { Places } from '../interpret/source.js';
import type { Named } from '../scope/names.js';
import type { FileCheck } from './file-check.js';

/** Two imported files bring the same name, and neither knows the other, so that chance decides which is taken. */
export const importClash = reporter('import-clash', 'warning');

const TYPES = ['Material', 'Band', 'Machine', 'Connector', 'Pattern', 'Cabinet'];

export const importClashes: FileCheck = ({ file, places, services }) => {
  const [last] = file.imports.slice(-1);
  if (!last || file.imports.length < 2) return [];
  return TYPES.flatMap((type) => services.joinery.Files.clashes(file, type)).map(({ name, chosen, hidden }) =>
    importClash({
      source: places.property(last, 'path'),
      message: say`${name} comes from ${fileName(chosen)} and from ${fileName(hidden)}; the first is taken`,
      cure: say`Give one of the two another name, or define ${name} in this file.`,
      related: [chosen, hidden].map((node) => ({
        message: say`${name} of ${fileName(node)}`,
        source: new Places(node).property(node, 'name'),
      })),
    }),
  );
};

const fileName = (node: Named): string => {
  const uri = AstUtils.findRootNode(node).$document?.uri;
  return uri ? UriUtils.basename(uri) : 'this file';
};
