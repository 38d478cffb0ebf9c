import { type AstNode, AstUtils } from 'langium';
import {
  isBand,
  isCabinet,
  isChanges,
  isConnector,
  isFile,
  isGlue,
  isJig,
  isLimits,
  isMachine,
  isMaterial,
  isParameter,
  isPart,
  isPattern,
  isPose,
  isTolerances,
} from '../generated/ast.js';
import { changesHover } from './changes.js';
import type { Knowledge } from './knowledge.js';
import type { Lengths } from './lengths.js';
import { stale } from './markdown.js';
import { cabinetHover, parameterHover } from './parameter.js';
import { partHover } from './part.js';
import {
  bandHover,
  connectorHover,
  glueHover,
  jigHover,
  limitsHover,
  machineHover,
  materialHover,
  patternHover,
  poseHover,
} from './stock.js';
import { tolerancesHover } from './tolerances.js';

/** Anything that has a name, whether hovered where it is declared or where it is used. */
export function declarationHover(node: AstNode, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const cabinet = AstUtils.getContainerOfType(node, isCabinet);
  if (cabinet === undefined) return stockHover(node, knowledge, lengths);
  const fitted = knowledge.fitted(cabinet);
  if (isPart(node)) return fitted && stale(partHover(fitted.result, node.name, lengths, knowledge.picture), fitted);
  const lines = knowledge.jobLines(cabinet);
  if (isParameter(node)) return stale(parameterHover(node, fitted?.result, lines, lengths), fitted);
  return stale(cabinetHover(cabinet, fitted?.result, lines, lengths), fitted);
}

/** An entry of a shop file, as its own file reads it. */
function stockHover(node: AstNode, knowledge: Knowledge, lengths: Lengths): string | undefined {
  const file = AstUtils.findRootNode(node);
  if (!isFile(file)) return undefined;
  const shop = knowledge.shop(file);
  if (isPose(node)) return poseHover(shop.pose);
  if (isLimits(node)) return limitsHover(shop.limits, lengths);
  if (isChanges(node)) return shop.changes && changesHover(shop.changes);
  if (isTolerances(node)) return shop.tolerances && tolerancesHover(shop.tolerances, lengths);
  if (isGlue(node)) return shop.glue && glueHover(shop.glue);
  if (isJig(node)) return shop.jig && jigHover(shop.jig, lengths);
  const entry = <T>(entries: ReadonlyMap<string, T>, show: (entry: T) => string) => {
    const found = 'name' in node ? entries.get(String(node.name)) : undefined;
    return found === undefined ? undefined : show(found);
  };
  if (isMaterial(node)) return entry(shop.materials, (material) => materialHover(material, lengths));
  if (isBand(node)) return entry(shop.bands, (band) => bandHover(band, lengths));
  if (isMachine(node)) return entry(shop.machines, (machine) => machineHover(machine, lengths));
  if (isConnector(node)) return entry(shop.connectors, (one) => connectorHover(one, shop, lengths));
  if (isPattern(node)) return entry(shop.patterns, (pattern) => patternHover(pattern, lengths));
  return undefined;
}
