import type { Fit, FittedPart, Half, Slot } from '../fit/fit.js';
import { Rational } from '../number/rational.js';
import { workOut } from '../pipeline.js';
import type { Toleranced } from '../spec/input.js';
import type { PartId, Spec } from '../spec/spec.js';
import type { Material, Shop } from '../spec/stock.js';

/** A batch of sheets as it measures, mm. */
export type Batch = ReadonlyMap<string, Rational>;

/** A figure that comes out otherwise, mm. */
export interface Changed {
  readonly from: Rational;
  readonly to: Rational;
}

export type Recut = { readonly part: PartId; readonly size: 'length' | 'width'; readonly change: Changed };

/** Something at the bench that is set otherwise for one half of a joint. */
export interface Reset {
  readonly joint: string;
  readonly part: PartId;
  readonly what: 'stop' | 'spacer' | 'across' | 'slot';
  /** Of a slot: its number from the datum. */
  readonly slot?: number | undefined;
  readonly change: Changed;
}

/** A groove, housing, rebate or notch that is cut elsewhere or otherwise. */
export interface CutAnew {
  readonly part: PartId;
  readonly kind: string;
  readonly joint?: string | undefined;
}

/** What becomes of a cabinet when a batch of sheets measures otherwise. */
export interface Otherwise {
  readonly spec: Spec;
  readonly fit: Fit;
  /** Parts whose sawn size changes. */
  readonly recut: readonly Recut[];
  readonly reset: readonly Reset[];
  readonly cuts: readonly CutAnew[];
  /** Parts that only come out as thick as the batch is. */
  readonly thicker: readonly { readonly part: PartId; readonly change: Changed }[];
}

/**
 * The same cabinet from a batch that measures otherwise; a material's tolerance stays what it was. Whichever thickness
 * sizes are worked from, the nominal or the measured one, is the one that is taken from the batch.
 */
export function fromBatch(spec: Spec, batch: Batch): Spec {
  const { bands, machines, connectors, patterns, jig, pose, limits, tolerances } = spec.shop;
  const materials = new Map(spec.shop.materials);
  for (const [name, value] of batch) {
    const material = materials.get(name);
    if (material) materials.set(name, thick(spec, material, value));
  }
  for (const [name, material] of materials)
    if (material.layers && !batch.has(name)) materials.set(name, gluedUp(spec, materials, material));
  const shop: Shop = { materials, bands, machines, connectors, patterns, jig, pose, limits, tolerances };
  return { ...spec, shop };
}

const used = (spec: Spec, material: Material): Toleranced =>
  spec.thickness === 'measured' && material.measured ? material.measured : material.thickness;

function thick(spec: Spec, material: Material, value: Rational): Material {
  const thickness = { ...used(spec, material), value };
  return spec.thickness === 'measured' ? { ...material, measured: thickness } : { ...material, thickness };
}

/** Sheets glued up of sheets of the batch are as thick as their layers now are. */
function gluedUp(
  spec: Spec,
  materials: ReadonlyMap<string, Material>,
  material: Material,
  within: ReadonlySet<string> = new Set(),
): Material {
  const layers = (material.layers ?? []).map((name) => {
    const layer = materials.get(name);
    if (!layer || within.has(name)) return undefined;
    return layer.layers ? gluedUp(spec, materials, layer, new Set([...within, name])) : layer;
  });
  const values = layers.flatMap((layer) => (layer ? [used(spec, layer).value] : []));
  if (values.length < layers.length) return material;
  const value = Rational.sum(values);
  return value.equals(used(spec, material).value) ? material : thick(spec, material, value);
}

/** Works a cabinet out from another batch, and lists what has to be re-cut or re-set. */
export function ifMeasured(spec: Spec, batch: Batch): Otherwise {
  const before = workOut(spec).fit;
  const other = fromBatch(spec, batch);
  const after = workOut(other).fit;
  const later = new Map(after.parts.map((part) => [part.id, part]));
  const pairs = before.parts.flatMap((part) => {
    const now = later.get(part.id);
    return now ? [[part, now] as const] : [];
  });
  return {
    spec: other,
    fit: after,
    recut: pairs.flatMap(([part, now]) => recutOf(part, now)),
    reset: resetOf(before, after),
    cuts: pairs.flatMap(([part, now]) => cutsOf(part, now)),
    thicker: pairs.flatMap(([part, now]) => {
      const change = changed(part.cutSize?.thickness, now.cutSize?.thickness);
      return change ? [{ part: part.id, change }] : [];
    }),
  };
}

function changed(from: Rational | undefined, to: Rational | undefined): Changed | undefined {
  return from && to && !from.equals(to) ? { from, to } : undefined;
}

const recutOf = (part: FittedPart, now: FittedPart): readonly Recut[] =>
  (['length', 'width'] as const).flatMap((size) => {
    const change = changed(part.cutSize?.[size], now.cutSize?.[size]);
    return change ? [{ part: part.id, size, change }] : [];
  });

function resetOf(before: Fit, after: Fit): readonly Reset[] {
  const later = new Map(after.joints.map((joint) => [joint.id, joint]));
  return before.joints.flatMap((joint) => {
    const now = later.get(joint.id);
    return joint.halves.flatMap((half, i) => {
      const other = now?.halves[i];
      return other ? settings(joint.id, half, other) : [];
    });
  });
}

function settings(joint: string, half: Half, now: Half): readonly Reset[] {
  const found: Reset[] = [];
  const add = (what: Reset['what'], from: Rational | undefined, to: Rational | undefined, slot?: number) => {
    const change = changed(from, to);
    if (change) found.push({ joint, part: half.part, what, slot, change });
  };
  add('stop', half.stop?.at, now.stop?.at);
  add('spacer', half.spacer.width, now.spacer.width);
  // A face's slots lie where its stop and its base put them: one of the two that has changed is told.
  if (half.role !== 'face') add('across', half.across, now.across);
  else add('across', beyondStop(half), beyondStop(now));
  const later = new Map(now.slots.map((slot): [number, Slot] => [slot.number, slot]));
  for (const slot of half.slots) add('slot', slot.fromZero, later.get(slot.number)?.fromZero, slot.number);
  return found;
}

const beyondStop = ({ across, stop }: Half): Rational => (stop ? across.sub(stop.at) : across);

/** Grooves and the like are compared from the sides of their own part, so that a part that only moves is left out. */
function cutsOf(part: FittedPart, now: FittedPart): readonly CutAnew[] {
  const figures = ({ box, cuts }: FittedPart) =>
    cuts.map((cut) => {
      if (!('box' in cut) || !box) return { cut, key: '' };
      const near = (['x', 'y', 'z'] as const).map((axis) =>
        [
          cut.box.lo[axis].sub(box.lo[axis]),
          box.hi[axis].sub(cut.box.hi[axis]),
          cut.box.hi[axis].sub(cut.box.lo[axis]),
        ].join(),
      );
      return { cut, key: near.join(';') };
    });
  const later = figures(now);
  return figures(part).flatMap(({ cut, key }, i) => {
    const other = later[i];
    if (key === '' || !other || !('box' in cut) || sameCut(key, other.key)) return [];
    return [{ part: part.id, kind: cut.kind, joint: 'joint' in cut ? cut.joint : undefined }];
  });
}

/** The same cut if, along each axis, it is as wide as before and as far from one of the two sides. */
function sameCut(a: string, b: string): boolean {
  const [before, after] = [a.split(';'), b.split(';')];
  return before.every((text, i) => {
    const [low, high, width] = text.split(',');
    const [newLow, newHigh, newWidth] = (after[i] ?? '').split(',');
    return (low === newLow && high === newHigh) || (width === newWidth && (low === newLow || high === newHigh));
  });
}
