import {
  type Band,
  type Connector,
  type Glue,
  type Jig,
  type Layout,
  type Limits,
  type Machine,
  type Material,
  type Pattern,
  type Pose,
  Rational,
  type Shop,
  type Sold,
  type Stock,
  type Tolerance,
  type Toleranced,
  USUAL_SPARE,
} from '@dryfit/engine';
import type { Lengths } from './lengths.js';
import { code, paragraphs, plain } from './markdown.js';

/** Names and values, a line each; those without a value are left out. */
type Facts = readonly (readonly [name: string, value: string | undefined])[];

export function materialHover(material: Material, lengths: Lengths): string {
  const { sheet, grain, stiffness, stiffnessAcross, density, creep, movement, layers, oversize } = material;
  return entry('material', material, [
    ['thickness', toleranced(material.thickness, lengths)],
    ['measured', material.measured ? toleranced(material.measured, lengths) : 'not yet'],
    ['sheet', sheet && lengths.product([sheet.length, sheet.width])],
    ['grain along', grain && sheet && lengths.unit(sheet[grain])],
    ['layers', layers?.map(code).join(', ')],
    ['oversize of each layer', oversize && lengths.unit(oversize)],
    ['stiffness', stiffness && `${stiffness.toNumber()} GPa`],
    ['stiffness across the grain', stiffnessAcross && `${stiffnessAcross.toNumber()} GPa`],
    ['density', density && `${density.toNumber()} kg/m³`],
    ['creep', creep && `${creep.toNumber()} of what it sags at first`],
    ['movement', movement && `${movement.toNumber()} of its width for each % of moisture`],
  ]);
}

export function bandHover(band: Band, lengths: Lengths): string {
  return entry('band', band, [
    ['thickness', toleranced(band.thickness, lengths)],
    ['oversize', band.oversize && `${lengths.unit(band.oversize)}, to be trimmed`],
    ...soldFacts(band, 'rolls'),
  ]);
}

/** How much a glue line takes, and how the glue is sold. */
export function glueHover(glue: Glue): string {
  return entry('glue', glue, [
    ['spread', `${Number(glue.spread.toNumber().toFixed(1))} g/m² of a glue line`],
    ...soldFacts(glue, 'packs'),
  ]);
}

function soldFacts({ packs, spare }: Sold, word: 'packs' | 'rolls'): Facts {
  const part = spare ?? USUAL_SPARE;
  return [
    [word, packs?.length ? `of ${packs.map(({ text }) => text).join(', ')}` : undefined],
    [
      'spare',
      `${Number(part.mul(Rational.of(100)).toNumber().toFixed(2))} %${spare ? '' : ', as the language has it'}`,
    ],
  ];
}

export function machineHover(machine: Machine, lengths: Lengths): string {
  const { base, body, diameter, kerf, kind } = machine;
  const [least, most] = [lengths.unit(base.least), lengths.unit(base.most)];
  const reach = base.least.equals(base.most) ? least : `${least} to ${most}`;
  return entry('machine', machine, [
    [{ disc: 'cutter', mortiser: 'bit', drill: 'drill' }[kind], `${lengths.unit(diameter)} across`],
    ['kerf', kind === 'disc' ? lengths.unit(kerf) : undefined],
    ['base to centre', `${reach}${toleranceWords(base, lengths)}`],
    ['body', body && `${lengths.unit(body)} wide`],
  ]);
}

export function connectorHover(connector: Connector, shop: Shop | undefined, lengths: Lengths): string {
  const { along, across, clearance, machine, plunge, shape, slot, thickness } = connector;
  const { face, edge } = plunge;
  const known = shop?.machines.get(machine);
  const round = shape === 'dowel';
  return entry('connector', connector, [
    ['kind', shape],
    ['diameter', round ? lengths.unit(along) : undefined],
    ['along the run', round ? undefined : lengths.unit(along)],
    [round ? 'length' : 'across the joint', lengths.unit(across)],
    ['thickness', round ? undefined : lengths.unit(thickness)],
    ['mortise length', slot && lengths.unit(slot)],
    [
      'plunge',
      face.equals(edge) ? lengths.unit(face) : `${lengths.unit(face)} in a face, ${lengths.unit(edge)} in an edge`,
    ],
    ['room for glue', clearance && lengths.unit(clearance)],
    ['machine', known ? `${code(machine)} (${lengths.unit(known.diameter)})` : code(machine)],
    ...soldFacts(connector, 'packs'),
  ]);
}

export function patternHover(pattern: Pattern, lengths: Lengths): string {
  return entry('pattern', pattern, layoutFacts(pattern.layout, lengths));
}

function layoutFacts(layout: Layout, lengths: Lengths): Facts {
  if (layout.kind === 'lines') {
    return [
      ['lines', `${lengths.list(layout.lines)} from zero`],
      ['skip', layout.skip && `a line nearer than ${lengths.unit(layout.skip)} to an end of where the parts touch`],
    ];
  }
  return [
    ['first', `${lengths.unit(layout.first)} from the end of where the parts touch`],
    ['last', `${lengths.unit(layout.last)} from its other end`],
    [
      'pitch',
      layout.most ? `at most ${lengths.unit(layout.most)}, all alike` : layout.pitch && lengths.unit(layout.pitch),
    ],
  ];
}

export function jigHover(jig: Jig, lengths: Lengths): string {
  const { bed, fences, hold, reach, spacers, stop, within } = jig;
  const off = within ? `, a stack up to ${lengths.unit(within)} off` : '';
  const step = stop?.step ? ` in steps of ${lengths.unit(stop.step)}` : '';
  return entry('jig', jig, [
    ['bed', bed && lengths.unit(bed)],
    ['reach', reach && lengths.unit(reach)],
    ['fences', fences.join(', ') || 'none'],
    ['stop', stop && `${lengths.of(stop.least)} to ${lengths.unit(stop.most)}${step}`],
    ['spacers', spacers.length === 0 ? 'none' : `${lengths.list(spacers)}${off}`],
    ['held by', hold],
  ]);
}

export function poseHover(pose: Pose): string {
  return paragraphs(
    '**pose**: how this shop holds a piece',
    list([
      ['edge slots', referenceWay(pose, 'edge')],
      ['face slots', referenceWay(pose, 'face')],
    ]),
  );
}

function referenceWay(pose: Pose, slots: 'edge' | 'face'): string {
  const other = pose[slots] === 'down' ? 'up' : 'down';
  return `reference ${pose[slots]}${pose.either?.includes(slots) ? ` or ${other}` : ''}`;
}

export function limitsHover(limits: Limits, lengths: Lengths): string {
  const { alike, gap, glueOpen, jointTime, movement, sag, sagAtMost, sagInTime, skin, slotToEdge, step, wall } = limits;
  const rows = { slotToEdge, wall, skin, step, gap, alike, movement, ...(sagAtMost ? { sagAtMost } : {}) };
  const parts = { sag, ...(sagInTime ? { sagInTime } : {}) };
  const own = (name: string) => (limits.written.includes(name) ? '' : ', as the language has it');
  return paragraphs(
    '**limits**: the least that has to stay, and the most that is let pass',
    list([
      ...Object.entries(rows).map(([name, limit]): readonly [string, string] => [
        LIMIT_WORDS[name as keyof typeof LIMIT_WORDS],
        `${lengths.unit(limit)}${own(name)}`,
      ]),
      ...Object.entries(parts).map(([name, part]): readonly [string, string] => [
        LIMIT_WORDS[name as keyof typeof LIMIT_WORDS],
        `1/${Number((1 / part.toNumber()).toFixed(1))} of its span${own(name)}`,
      ]),
      ['glue open', minutes(glueOpen)],
      ['a joint closed in', minutes(jointTime)],
    ]),
  );
}

const minutes = (time: Rational | undefined): string | undefined => time && `${Number(time.toNumber().toFixed(2))} min`;

const LIMIT_WORDS = {
  slotToEdge: 'slot to edge along the run',
  wall: 'wall beside a slot',
  skin: 'skin under a slot',
  step: 'step between surfaces',
  gap: 'opening along a joint',
  alike: 'sizes taken for alike within',
  movement: 'movement along a glued joint',
  sag: 'sag of a loaded shelf at first',
  sagAtMost: 'sag at first at most',
  sagInTime: 'sag in time',
} as const;

function entry(kind: string, stock: Stock, facts: Facts): string {
  const source = stock.provenance === undefined ? 'no source given' : `source: ${plain(stock.provenance)}`;
  return paragraphs(`**${plain(stock.name)}**: ${kind}`, list(facts), source);
}

const list = (facts: Facts): string =>
  facts.flatMap(([name, value]) => (value === undefined ? [] : [`- ${name} ${value}`])).join('\n');

function toleranced({ value, tolerance: stray }: Toleranced, lengths: Lengths): string {
  return `${lengths.unit(value)}${stray ? toleranceWords(stray, lengths) : ''}`;
}

/** ` ± 0.2`, ` plus 0.7 minus 0.9`, or nothing. */
export function toleranceWords({ plus, minus }: Partial<Tolerance>, lengths: Lengths): string {
  if (plus === undefined || minus === undefined || (isZero(plus) && isZero(minus))) return '';
  if (plus.equals(minus)) return ` ± ${lengths.of(plus)}`;
  return ` plus ${lengths.of(plus)} minus ${lengths.of(minus)}`;
}

const isZero = (length: Rational): boolean => length.isZero();
