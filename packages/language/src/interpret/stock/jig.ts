import { type Finding, type Jig, say } from '@dryfit/engine';
import type { Jig as JigNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { Settings } from '../settings.js';

export function readJig(node: JigNode, unit: Unit, report: (finding: Finding) => void): Jig | undefined {
  const settings = new Settings(node, `jig ${node.name}`, unit, report);
  if (node.name === undefined) return undefined;
  const fences = settings.one(node.fences, 'fences', 'fences');
  const spacers = settings.one(node.spacers, 'spacers', 'spacers');
  const pieces = (spacers?.pieces ?? []).map((piece) => settings.length(piece, 'spacers'));
  const hold = settings.one(node.hold, 'hold', 'hold');
  return {
    name: node.name,
    source: settings.places.of(node),
    provenance: settings.one(node.source, 'source', 'source'),
    bed: settings.optionalLength(node.bed, 'bed', 'bed'),
    reach: settings.optionalLength(node.reach, 'reach', 'reach'),
    fences: [...new Set(fences?.ends.filter((end) => end === 'left' || end === 'right'))],
    stop: readStop(settings),
    spacers: pieces.filter((piece) => piece !== undefined),
    within: settings.length(spacers?.within, 'within', 'zero'),
    hold: hold === 'beam' || hold === 'clamps' ? hold : undefined,
  };
}

function readStop(settings: Settings<JigNode>): Jig['stop'] {
  const written = settings.one(settings.node.stop, 'stop', 'stop');
  const least = settings.length(written?.least, 'stop', 'zero');
  const most = settings.length(written?.most, 'stop');
  const step = settings.length(written?.step, 'step of the stop');
  if (!written || !least || !most) return undefined;
  if (least.le(most)) return { least, most, step };
  settings.wrong(
    written,
    say`the stop of ${settings.what} runs from ${least} to ${most}, which is backwards`,
    say`Write the smaller figure first.`,
  );
  return undefined;
}
