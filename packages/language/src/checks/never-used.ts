import { type Finding, say } from '@dryfit/engine';
import type { AstNode } from 'langium';
import { reporter } from '../findings/report.js';
import { type Cabinet, isCabinet, isChanges, isGlue, isJig, isLimits, isPose, isTolerances } from '../generated/ast.js';
import { type Named, namesOfCabinet, namesOfFile } from '../scope/names.js';
import type { FileCheck } from './file-check.js';

/** Something is defined and nothing uses it: a leaving, or a name mistyped where it should be used. */
export const neverUsed = reporter('never-used', 'warning');

/** Stock counts only in a file with cabinets that no other file imports: elsewhere it is there for others. */
export const unused: FileCheck = ({ file, document, places, services }) => {
  const used = new Set<AstNode>();
  for (const reference of document.references) if ('ref' in reference && reference.ref) used.add(reference.ref);
  const cabinets = file.entries.filter(isCabinet);
  const found = cabinets.flatMap((cabinet) => inside(cabinet));
  if (cabinets.length === 0 || services.joinery.isImported(document.uri)) return found;
  for (const [type, names] of namesOfFile(file).byType) {
    if (type === 'Cabinet' || type === 'Job') continue;
    for (const node of names.values())
      if (!used.has(node) && !isWholeShop(node)) found.push(report(node, 'in this file'));
  }
  return found;

  function inside(cabinet: Cabinet): Finding[] {
    const { parts, parameters } = namesOfCabinet(cabinet);
    const idle = [...parameters.values(), ...parts.values()].filter((node) => !used.has(node));
    return idle.map((node) => report(node, `in ${cabinet.name}`));
  }

  function report(node: Named, where: string): Finding {
    return neverUsed({
      source: places.property(node, 'name'),
      message: say`nothing ${where} uses the ${node.$type.toLowerCase()} ${node.name}`,
      cure: say`Take it out, or use it.`,
      parts: node.$type === 'Part' ? [node.name] : [],
    });
  }
};

/** What counts for the whole file without being named. */
const isWholeShop = (node: AstNode): boolean =>
  isJig(node) || isPose(node) || isLimits(node) || isTolerances(node) || isChanges(node) || isGlue(node);
