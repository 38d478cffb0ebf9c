import { type Connector, type ConnectorShape, type Finding, type Rational, say } from '@dryfit/engine';
import type { Connector as ConnectorNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { Settings } from '../settings.js';
import { readSold } from './sold.js';

const SHAPES: Readonly<Record<string, ConnectorShape>> = {
  biscuit: 'biscuit',
  loosetenon: 'loose tenon',
  dowel: 'dowel',
};

export function readConnector(
  node: ConnectorNode,
  unit: Unit,
  report: (finding: Finding) => void,
): Connector | undefined {
  const settings = new Settings(node, `connector ${node.name}`, unit, report);
  const shape = SHAPES[node.shape];
  if (shape === undefined) return undefined;
  const size = shape === 'dowel' ? readDowel(settings) : readFlat(settings, shape);
  const plunge = readPlunge(settings);
  const machine = settings.needed(node.machine, 'machine', 'machine', 'by joiner');
  const clearance = settings.optionalLength(node.clearance, 'clearance', 'clearance', 'zero');
  const sold = readSold(settings, node.packs, { property: 'packs', example: 'packs of 100, 1000' });
  const provenance = settings.one(node.source, 'source', 'source');
  if (!size || !plunge || !machine?.ref || settings.incomplete || node.name === undefined) return undefined;
  return {
    name: node.name,
    source: settings.places.of(node),
    provenance,
    shape,
    ...size,
    plunge,
    clearance,
    machine: machine.ref.name,
    ...sold,
  };
}

type Size = Pick<Connector, 'along' | 'across' | 'thickness' | 'slot'>;

/** Biscuits and loose tenons: flat pieces with three sizes; a tenon also needs the length of its mortise. */
function readFlat(settings: Settings<ConnectorNode>, shape: ConnectorShape): Size | undefined {
  const { node } = settings;
  const why = say`a ${shape} is measured along the run, across the joint and in thickness`;
  settings.refuse('diameter', node.diameter, 'diameter', why);
  settings.refuse('length', node.length, 'length', why);
  const along = settings.neededLength(node.along, 'size along the run', 'along', 'along 56');
  const across = settings.neededLength(node.across, 'size across the joint', 'across', 'across 23');
  const thickness = settings.neededLength(node.thickness, 'thickness', 'thickness', 'thickness 4');
  let slot: Rational | undefined;
  if (shape === 'biscuit') settings.refuse('slot', node.slot, 'slot length', say`the cutter's plunge makes it`);
  else slot = settings.neededLength(node.slot, 'slot length', 'slot', 'slot 23');
  return along && across && thickness && { along, across, thickness, slot };
}

function readDowel(settings: Settings<ConnectorNode>): Size | undefined {
  const { node } = settings;
  const why = say`a dowel is measured by its diameter and its length`;
  settings.refuse('along', node.along, 'size along the run', why);
  settings.refuse('across', node.across, 'size across the joint', why);
  settings.refuse('thickness', node.thickness, 'thickness', why);
  settings.refuse('slot', node.slot, 'slot length', say`its hole is as wide as the drill`);
  const diameter = settings.neededLength(node.diameter, 'diameter', 'diameter', 'diameter 8');
  const length = settings.neededLength(node.length, 'length', 'length', 'length 30');
  return diameter && length && { along: diameter, across: length, thickness: diameter };
}

/** One depth for both halves, or one each. */
function readPlunge(settings: Settings<ConnectorNode>): Connector['plunge'] | undefined {
  const written = settings.needed(settings.node.plunge, 'plunge', 'plunge', 'plunge 12.3');
  if (!written) return undefined;
  const depths = new Map<string, Rational>();
  for (const { depth, where } of written.depths) {
    const value = settings.length(depth, 'plunge');
    if (!value) return settings.fail();
    if (where === undefined && written.depths.length > 1) {
      settings.wrong(
        written,
        say`one of the two depths of ${settings.what} does not say where it is cut`,
        say`Write both, as in plunge 14 in face, 28 in edge.`,
      );
      return settings.fail();
    }
    depths.set(where ?? 'both', value);
  }
  const face = depths.get('face') ?? depths.get('both');
  const edge = depths.get('edge') ?? depths.get('both');
  if (face && edge) return { face, edge };
  settings.missing(`plunge ${face ? 'in edge' : 'in face'}`, 'plunge 14 in face, 28 in edge');
  return undefined;
}
