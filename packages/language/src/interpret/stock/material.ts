import { type Band, type Finding, type Material, Rational, say, type Toleranced } from '@dryfit/engine';
import { layerCycle } from '../../checks/layer-cycle.js';
import type { Band as BandNode, Material as MaterialNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { plainNumber } from '../figure.js';
import { Settings } from '../settings.js';
import { readSold } from './sold.js';

/** Finds the material that a layer names, worked out already or now. */
export type FindMaterial = (node: MaterialNode) => Material | undefined;

/** A sheet, or sheets glued up into one; undefined when its thickness cannot be told. */
export function readMaterial(
  node: MaterialNode,
  unit: Unit,
  report: (finding: Finding) => void,
  find: FindMaterial,
): Material | undefined {
  const settings = new Settings(node, `material ${node.name}`, unit, report);
  const layers = settings.one(node.layers, 'layers', 'layers');
  const names = layers?.materials.map((layer) => layer.$refText);
  const sums = layers && sumOfLayers(layers.materials.map((layer) => layer.ref && find(layer.ref)));
  if (layers) {
    const why = say`its thickness is the sum of its layers`;
    settings.refuse('thickness', node.thickness, 'thickness of its own', why);
    settings.refuse('measured', node.measured, 'measured thickness of its own', why);
    if (!sums) settings.fail();
  }
  const thickness = sums
    ? sums.thickness
    : layers
      ? undefined
      : settings.toleranced(settings.needed(node.thickness, 'thickness', 'thickness', 'thickness 18'), 'thickness');
  const measured = sums
    ? sums.measured
    : settings.toleranced(settings.one(node.measured, 'measured', 'measured'), 'measured thickness');
  const sheet = readSheet(node, settings);
  const oversize = settings.optionalLength(node.oversize, 'oversize', 'oversize', 'zero');
  if (oversize !== undefined && !layers) {
    settings.refuse('oversize', node.oversize, 'oversize', say`only layers are cut larger and trimmed`);
  }
  const figures = readFigures(settings);
  if (!thickness || settings.incomplete || node.name === undefined) return undefined;
  return {
    name: node.name,
    source: settings.places.of(node),
    provenance: settings.one(node.source, 'source', 'source'),
    thickness,
    measured,
    ...sheet,
    layers: names,
    oversize,
    ...figures,
  };
}

/** Finding about a material that is made of itself, and so has no thickness. */
export function reportLayerCycle(node: MaterialNode, unit: Unit, report: (finding: Finding) => void): void {
  const { places } = new Settings(node, '', unit, report);
  report(
    layerCycle({
      source: places.property(node, 'layers'),
      message: say`${node.name} is made of layers of itself`,
      cure: say`Name the sheets that are glued up, not what they become.`,
    }),
  );
}

export function readBand(node: BandNode, unit: Unit, report: (finding: Finding) => void): Band | undefined {
  const settings = new Settings(node, `band ${node.name}`, unit, report);
  const written = settings.needed(node.thickness, 'thickness', 'thickness', 'thickness 1');
  const thickness = settings.toleranced(written, 'thickness');
  const oversize = settings.optionalLength(node.oversize, 'oversize', 'oversize', 'zero');
  const sold = readSold(settings, node.rolls, { property: 'rolls', example: 'rolls of 50 m' });
  if (!thickness || node.name === undefined) return undefined;
  const provenance = settings.one(node.source, 'source', 'source');
  return { name: node.name, source: settings.places.of(node), provenance, thickness, oversize, ...sold };
}

/** Thicknesses and tolerances add; what was measured counts only if every layer was. */
function sumOfLayers(
  layers: readonly (Material | undefined)[],
): { readonly thickness: Toleranced; readonly measured: Toleranced | undefined } | undefined {
  const known = layers.filter((layer) => layer !== undefined);
  if (known.length < layers.length || known.length === 0) return undefined;
  const measured = known.map((layer) => layer.measured).filter((length) => length !== undefined);
  return {
    thickness: total(known.map((layer) => layer.thickness)),
    measured: measured.length === known.length ? total(measured) : undefined,
  };
}

function total(lengths: readonly Toleranced[]): Toleranced {
  const value = Rational.sum(lengths.map((length) => length.value));
  if (lengths.every(({ tolerance }) => tolerance === undefined)) return { value };
  const plus = Rational.sum(lengths.map(({ tolerance }) => tolerance?.plus ?? Rational.ZERO));
  const minus = Rational.sum(lengths.map(({ tolerance }) => tolerance?.minus ?? Rational.ZERO));
  return { value, tolerance: { plus, minus } };
}

function readSheet(node: MaterialNode, settings: Settings<MaterialNode>): Pick<Material, 'sheet' | 'grain'> {
  const written = settings.one(node.sheet, 'sheet', 'sheet');
  const length = settings.length(written?.length, 'sheet');
  const width = settings.length(written?.width, 'sheet');
  const sheet = length && width && { length, width };
  const along = settings.one(node.grain, 'grain', 'grain');
  const run = settings.length(along, 'grain');
  if (!along || !run) return { sheet };
  if (!sheet) {
    if (!written) settings.missing('sheet', 'sheet 2440 x 1220, which the grain runs along one side of');
    return {};
  }
  if (run.equals(sheet.length)) return { sheet, grain: 'length' };
  if (run.equals(sheet.width)) return { sheet, grain: 'width' };
  settings.wrong(
    along,
    say`the grain of ${settings.what} runs along ${run}, and its sheet is ${sheet.length} x ${sheet.width}`,
    say`Write the side of the sheet that the grain runs along, ${sheet.length} or ${sheet.width}.`,
  );
  return { sheet };
}

/** Figures that are no lengths: how each is called, its unit, and one that could be written. */
const FIGURES = {
  stiffness: { words: 'stiffness', unit: ' GPa', example: '8.5' },
  stiffnessAcross: { words: 'stiffness across', unit: ' GPa', example: '4' },
  density: { words: 'density', unit: ' kg/m3', example: '680' },
  creep: { words: 'creep', unit: '', example: '0.8' },
  movement: { words: 'movement', unit: ' per %', example: '0.00365' },
} as const;

type Figure = keyof typeof FIGURES;

function readFigures(settings: Settings<MaterialNode>): { readonly [F in Figure]?: Rational | undefined } {
  const read = (property: Figure): Rational | undefined => {
    const { words, unit, example } = FIGURES[property];
    const text = settings.one(settings.node[property], words, property);
    if (text === undefined) return undefined;
    const value = plainNumber(text);
    if (value && value.sign() > 0) return value;
    settings.wrong(
      settings.node,
      say`the ${words} of ${settings.what} is a figure above 0${unit === '' ? '' : ` in${unit}`}, and ${text} is none`,
      say`Write it as a plain number, as in ${words} ${example}${unit}.`,
    );
    return undefined;
  };
  return {
    stiffness: read('stiffness'),
    stiffnessAcross: read('stiffnessAcross'),
    density: read('density'),
    creep: read('creep'),
    movement: read('movement'),
  };
}
