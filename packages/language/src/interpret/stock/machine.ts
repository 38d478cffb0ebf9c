import { type Finding, type Machine, type MachineKind, type Rational, say } from '@dryfit/engine';
import type { Machine as MachineNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { Settings } from '../settings.js';

const KINDS = [
  ['cutter', 'disc'],
  ['bit', 'mortiser'],
  ['drill', 'drill'],
] as const;

/** A machine is what its tool makes it: a cutter a disc, a bit a mortiser, a drill a drill. */
export function readMachine(node: MachineNode, unit: Unit, report: (finding: Finding) => void): Machine | undefined {
  const settings = new Settings(node, `machine ${node.name}`, unit, report);
  const tool = readTool(settings);
  const base = readBase(settings);
  const kerf = tool && readKerf(settings, tool);
  const body = settings.optionalLength(node.body, 'body', 'body');
  const provenance = settings.one(node.source, 'source', 'source');
  if (!tool || !base || !kerf || settings.incomplete || node.name === undefined) return undefined;
  return { name: node.name, source: settings.places.of(node), provenance, ...tool, kerf, base, body };
}

interface Tool {
  readonly kind: MachineKind;
  readonly diameter: Rational;
}

function readTool(settings: Settings<MachineNode>): Tool | undefined {
  const { node } = settings;
  const [first, ...others] = KINDS.filter(([word]) => node[word].length > 0);
  if (!first) {
    settings.missing('cutter, bit or drill', 'cutter 100 for a joiner, bit 8 for a mortiser, drill 8 for a drill');
    return undefined;
  }
  const [word, kind] = first;
  for (const [other] of others) settings.refuse(other, node[other], other, say`it has a ${word} already`);
  const diameter = settings.neededLength(node[word], word, word, `${word} 8`);
  return diameter && { kind, diameter };
}

/** A disc's kerf is its own figure; a bit cuts as wide as it is. */
function readKerf(settings: Settings<MachineNode>, tool: Tool): Rational | undefined {
  const { node } = settings;
  if (tool.kind === 'disc') return settings.neededLength(node.kerf, 'kerf', 'kerf', 'kerf 4');
  settings.refuse('kerf', node.kerf, 'kerf', say`a bit cuts as wide as it is`);
  return tool.diameter;
}

function readBase(settings: Settings<MachineNode>): Machine['base'] | undefined {
  const { node } = settings;
  const written = settings.needed(node.base, 'base to centre', 'base', 'base to centre 9.5');
  const least = settings.toleranced(written?.least, 'base to centre');
  const most = written?.most ? settings.toleranced(written.most, 'base to centre') : least;
  if (!written || !least || !most) return settings.fail();
  if (most.value.lt(least.value)) {
    settings.wrong(
      written,
      say`the base of ${settings.what} is set from ${least.value} to ${most.value}, which runs backwards`,
      say`Write the smaller figure first.`,
    );
    return settings.fail();
  }
  const tolerance = most.tolerance ?? least.tolerance;
  return { least: least.value, most: most.value, plus: tolerance?.plus, minus: tolerance?.minus };
}
