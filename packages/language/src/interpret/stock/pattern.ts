import { type Finding, type Layout, type Pattern, type Rational, say } from '@dryfit/engine';
import { settingWrong } from '../../checks/setting-wrong.js';
import type { Expression, Layout as LayoutNode, Pattern as PatternNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { Settings } from '../settings.js';
import { evaluateLength, type Reading } from '../values.js';

export function readPattern(node: PatternNode, unit: Unit, report: (finding: Finding) => void): Pattern | undefined {
  const settings = new Settings(node, `pattern ${node.name}`, unit, report);
  const written = settings.needed(node.layouts, 'lines', 'layouts', 'lines 70, 180, 270');
  const layout = readLayout(written, settings.reading);
  if (!layout || node.name === undefined) return undefined;
  const provenance = settings.one(node.source, 'source', 'source');
  return { name: node.name, source: settings.places.of(node), provenance, layout };
}

/** Where connectors go along a run, in mm; undefined where a figure is missing or wrong. */
export function readLayout(node: LayoutNode | undefined, reading: Reading): Layout | undefined {
  if (!node) return undefined;
  const length = (expression: Expression | undefined, least: 'zero' | 'above zero' = 'zero') =>
    readDistance(expression, reading, least);
  if (node.lines.length > 0) {
    const lines = node.lines.map((line) => length(line));
    const skip = length(node.skip);
    if (node.skip && !skip) return undefined;
    return lines.every((line) => line !== undefined) ? { kind: 'lines', lines, skip } : undefined;
  }
  const first = length(node.first);
  const last = length(node.last);
  const most = length(node.most, 'above zero');
  const pitch = length(node.pitch, 'above zero');
  if (!first || !last || (node.most && !most) || (node.pitch && !pitch)) return undefined;
  return { kind: 'spread', first, last, most, pitch };
}

function readDistance(
  expression: Expression | undefined,
  reading: Reading,
  least: 'zero' | 'above zero',
): Rational | undefined {
  const distance = evaluateLength(expression, reading)?.value;
  if (!expression || !distance) return undefined;
  if (distance.sign() > 0 || (distance.sign() === 0 && least === 'zero')) return distance;
  reading.report(
    settingWrong({
      source: reading.places.expression(expression),
      message: say`lines are laid out forward from the datum, and ${distance} is not`,
      cure: say`Write a distance ${least === 'zero' ? 'of 0 or more' : 'above 0'}.`,
    }),
  );
  return undefined;
}
