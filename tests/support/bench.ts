import type { FitJson, PlanJson } from '@dryfit/output';
import { cross, distance, dot, OUT, plus, times, unit, type Vector } from './vectors.js';

/*
 * A bench with nothing but what stands in fit.json and plan.json. A panel is a block of wood with its sizes; it is turned as
 * the plan says, pushed against fence, spacer and stop, and milled line by line; then it is turned back and its slots are
 * held against those of the fit.
 */

type Cabinet = FitJson['cabinets'][number];
type Part = Cabinet['parts'][number];
type SetUp = PlanJson['setUps'][number];
export type Operation = SetUp['operations'][number];
type Side = Operation['surface'];

/** The sides of a panel as it lies at the bench: without bands that come later. */
function sidesOf(cabinet: Cabinet, part: Part): Record<Side, number> {
  const { planes } = part;
  if (!planes) throw new Error(`${part.id} has no size`);
  const at = (side: Side): number => {
    const band = cabinet.milled === 'before banding' ? part.bands.find((one) => one.side === side) : undefined;
    const outward = Math.sign(OUT[side].reduce((a, b) => a + b));
    return planes[side].mm - outward * (band?.thickness.mm ?? 0);
  };
  return {
    left: at('left'),
    right: at('right'),
    front: at('front'),
    rear: at('rear'),
    bottom: at('bottom'),
    top: at('top'),
  };
}

function cornersOf(sides: Record<Side, number>): Vector[] {
  return [sides.left, sides.right].flatMap((x) =>
    [sides.front, sides.rear].flatMap((y) => [sides.bottom, sides.top].map((z): Vector => [x, y, z])),
  );
}

/** How the operator has the panel: what is to the right, what is up, and what looks at him. */
interface Held {
  readonly right: Vector;
  readonly up: Vector;
  readonly toward: Vector;
}

function held(part: Part, { surface, reference }: Operation): Held {
  const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === surface);
  const isMitre = reference.kind === 'toe' || reference.kind === 'heel';
  const toe = OUT[bevel?.toe ?? reference.side];
  const toward = isMitre ? unit(plus(OUT[surface], times(toe, -1))) : OUT[surface];
  const toToe = unit(plus(OUT[surface], toe));
  const way = isMitre ? times(toToe, reference.kind === 'toe' ? 1 : -1) : OUT[reference.side];
  const up = times(way, reference.looks === 'up' ? 1 : -1);
  return { right: cross(up, toward), up, toward };
}

/** A piece that lies in a row at one fence: how many lie before it, what stands between each two, and its lines. */
interface Row {
  readonly place: number;
  readonly between: number;
  readonly lines: Operation['lines'];
}

/** Middles of the slots that an operation makes in a panel, in the cabinet. */
function mill(cabinet: Cabinet, part: Part, setUp: SetUp, operation: Operation, row?: Row): Vector[] {
  const hold = held(part, operation);
  const corners = cornersOf(sidesOf(cabinet, part));
  const reach = (way: Vector) => corners.map((corner) => dot(corner, way));
  const { reference, fence } = operation;
  const isMitre = reference.kind === 'toe' || reference.kind === 'heel';
  const corner = isMitre ? mitreCorner(part, operation) : undefined;
  const aside = fence === 'right' ? hold.right : times(hold.right, -1);
  // In a row, all pieces before it lie between it and the fence, and what stands between them.
  const width = Math.max(...reach(aside)) + Math.max(...reach(times(aside, -1)));
  const before = row ? row.place * (width + row.between) : 0;
  const fenceAt = Math.max(...reach(aside)) + spacer(cabinet, part, setUp, operation) + before;
  const referenceWay = times(hold.up, reference.looks === 'up' ? 1 : -1);
  const referenceAt = corner ? dot(corner, referenceWay) : Math.max(...reach(referenceWay));
  const mouthAt = corner ? dot(corner, hold.toward) : Math.max(...reach(hold.toward));
  // A block keeps the piece's end off the stop.
  const inward = (setUp.stop?.mm ?? 0) + setUp.base.mm - (operation.stop?.block?.mm ?? 0);
  return (row?.lines ?? operation.lines).map(({ mm }) =>
    plus(plus(times(aside, fenceAt - mm), times(referenceWay, referenceAt - inward)), times(hold.toward, mouthAt)),
  );
}

/** The sharp corner of a mitred end, or the blunt one across its thickness. */
function mitreCorner(part: Part, { surface, reference }: Operation): Vector {
  const { planes } = part;
  const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === surface);
  if (!planes || !bevel?.toe) throw new Error(`${part.id} has no mitre at its ${surface}`);
  const at = (side: Side): Vector => times(OUT[side], dot(OUT[side], [1, 1, 1]) * planes[side].mm);
  const toe = plus(at(surface), at(bevel.toe));
  if (reference.kind === 'toe') return toe;
  const thickness = part.cut?.thickness.mm ?? 0;
  return plus(toe, times(plus(OUT[surface], OUT[bevel.toe]), -thickness));
}

function spacer(cabinet: Cabinet, part: Part, { spacer: block }: SetUp, { joint, surface }: Operation): number {
  if (block.kind === 'stock') return block.stack.reduce((sum, { mm }) => sum + mm, 0);
  if (block.kind === 'cut') return block.width?.mm ?? 0;
  if (block.kind === 'none') return 0;
  // Marked out: the lines are drawn as far in as the part itself lies.
  const halves = cabinet.joints.flatMap((one) => one.halves.filter((half) => half.part === part.id));
  const own = cabinet.joints.find((one) => one.id === joint)?.halves.find((half) => half.part === part.id);
  return (own ?? halves.find((half) => half.surface === surface))?.setback.mm ?? 0;
}

/** Where the fit has the slots of a part: the middles of their mouths, and how far a stack may put them off. */
function wanted(cabinet: Cabinet, part: Part): { readonly place: Vector; readonly near: number }[] {
  return cabinet.joints.flatMap(({ halves }) =>
    halves
      .filter((half) => half.part === part.id)
      .flatMap((half) =>
        half.slots.map(({ centre }) => {
          const middle: Vector = [centre.x.mm, centre.y.mm, centre.z.mm];
          const near = half.spacer.kind === 'stock' ? Math.abs(half.spacer.off.mm) + 0.21 : 0;
          if (half.role !== 'mitre') return { place: middle, near };
          // A mitre's slots are told by their toe line: on from there along the slope.
          const bevel = part.cuts.find((cut) => cut.kind === 'bevel' && cut.surface === half.surface);
          const slope = unit(plus(OUT[half.surface], OUT[bevel?.toe ?? half.reference.side]));
          const face = Math.SQRT2 * (part.cut?.thickness.mm ?? 0);
          const along = half.reference.kind === 'heel' ? face - half.reference.distance.mm : half.reference.distance.mm;
          return { place: plus(middle, times(slope, -along)), near };
        }),
      ),
  );
}

/** What is wrong with the rows of a set-up that a panel lies in: each place in a row has to make the same slots. */
function rowsOf(cabinet: Cabinet, part: Part, setUp: SetUp, operation: Operation): string[] {
  const alone = mill(cabinet, part, setUp, operation);
  const known = new Set([...setUp.lines.map(({ mm }) => mm)]);
  const off = operation.lines.some(({ mm }) => !known.has(mm)) ? [`${part.id}: a line that is not set`] : [];
  return setUp.alike
    .flatMap((row) => row.shares.map((share) => ({ row, share })))
    .filter(({ share }) => setUp.operations[share.operation] === operation)
    .flatMap(({ row, share }) => {
      const between = row.between.reduce((sum, { mm }) => sum + mm, 0);
      const lines = new Set([...known, ...row.marked.map(({ mm }) => mm)]);
      const inAll = row.shares.reduce((sum, { pieces }) => sum + pieces, 0);
      if (row.lines.length !== row.pieces || inAll !== row.pieces || share.pieces * row.times > operation.count)
        return [`${part.id}: ${row.times} rows of ${row.pieces} for ${operation.count} pieces`];
      return row.lines.flatMap((own, place) => {
        const made = mill(cabinet, part, setUp, operation, { place, between, lines: own });
        // A piece that lacks a line is as wrong as one that has a line elsewhere.
        const same =
          made.length === alone.length &&
          made.every((slot, i) => distance(slot, alone[i] ?? [Number.NaN, 0, 0]) < 1e-6);
        const there = own.every(({ mm }) => lines.has(mm));
        return same && there ? [] : [`${part.id}: slots of the ${place + 1}. piece of a row lie elsewhere`];
      });
    })
    .concat(off);
}

/** Mills everything as planned and returns what does not agree with the fit. */
export function disagreements(fit: FitJson, plan: PlanJson): string[] {
  const found: string[] = [];
  for (const cabinet of fit.cabinets)
    for (const part of cabinet.parts) {
      const made: Vector[] = [];
      let pieces = 0;
      for (const setUp of plan.setUps)
        for (const operation of setUp.operations)
          for (const group of operation.pieces) {
            if (group.cabinet !== cabinet.id || !group.parts.includes(part.id)) continue;
            pieces = group.count / group.parts.length;
            if (pieces !== cabinet.count) found.push(`${part.id}: ${pieces} pieces for ${cabinet.count} cabinets`);
            made.push(...mill(cabinet, part, setUp, operation));
            found.push(...rowsOf(cabinet, part, setUp, operation));
          }
      const slots = wanted(cabinet, part);
      if (made.length !== slots.length) found.push(`${part.id}: ${made.length} slots for ${slots.length}`);
      for (const { place, near } of slots) {
        const at = made.findIndex((one) => distance(one, place) <= near + 1e-6);
        if (at < 0) found.push(`${part.id}: no slot at ${place.map((mm) => mm.toFixed(3))}`);
        else made.splice(at, 1);
      }
    }
  return found;
}
