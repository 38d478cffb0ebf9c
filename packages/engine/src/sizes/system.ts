import type { Quantity } from '../number/quantity.js';
import type { Equation, Unknown } from '../solve/index.js';
import { axisOf, axisOfDimension, highSide, isHigh, lowSide, thicknessAxis } from '../spec/sides.js';
import type { DimensionStatement, NotchStatement, PartSpec, Spec } from '../spec/spec.js';
import { Builder } from './builder.js';
import { addFact, type RoundedOpenings } from './facts.js';
import { addGrooveWalls, addJoint } from './joint.js';
import { Planes, planeName } from './planes.js';
import { thicknessOf } from './thickness.js';

/** The unknown planes of a cabinet and every linear equation its spec states about them. */
export interface System {
  readonly planes: Planes;
  readonly unknowns: readonly Unknown[];
  readonly equations: readonly Equation[];
}

/** Turns statements into equations between planes; statements about parts that do not exist add nothing. */
export function buildSystem(spec: Spec, rounded: RoundedOpenings = new Map()): System {
  const planes = new Planes(spec.parts);
  const build = new Builder(planes);
  const partThickness = (part: PartSpec): Quantity => thicknessOf(spec, part.material);

  for (const part of spec.parts) {
    const material = spec.shop.materials.get(part.material);
    if (!material) continue;
    const axis = thicknessAxis(part.attitude);
    const measured = spec.thickness === 'measured' && material.measured ? 'measured' : 'nominal';
    const text = `${part.id} is as thick as ${material.name} (${measured})`;
    build.distance(
      partStatement(part),
      build.side(part.id, lowSide(axis)),
      build.side(part.id, highSide(axis)),
      partThickness(part),
      text,
      false,
    );
  }
  for (const statement of spec.statements) {
    if (statement.kind === 'joint' && statement.verb === 'groove') {
      for (const id of statement.entering) {
        const part = planes.part(id);
        if (part) planes.addGroove(part);
      }
    }
    if (statement.kind === 'notch') addNotch(build, statement);
  }
  addGrooveWalls(build, spec, partThickness);
  for (const statement of spec.statements) {
    if (statement.kind === 'dimension') addDimension(build, statement);
    if (statement.kind === 'joint') addJoint(build, spec, statement, rounded);
    if (statement.kind === 'placing') addFact(build, statement.id, statement.fact, statement.parts, [], rounded);
  }
  return { planes, unknowns: planes.unknowns, equations: build.equations };
}

/** Id under which a part's own declaration (and so its thickness) appears among the reasons. */
export const partStatement = (part: PartSpec): string => `part ${part.kind}`;

function addDimension(build: Builder, statement: DimensionStatement): void {
  const axis = axisOfDimension(statement.dimension);
  const { form, length, id } = statement;
  const words = `${statement.dimension} ${length.text}`;
  const low = lowSide(axis);
  const high = highSide(axis);
  switch (form.kind) {
    case 'over':
      build.distance(
        id,
        build.side(form.low, low),
        build.side(form.high, high),
        length,
        `${words} over ${form.low} and ${form.high}`,
      );
      return;
    case 'between':
      build.distance(
        id,
        build.side(form.low, high),
        build.side(form.high, low),
        length,
        `${words} between ${form.low} and ${form.high}`,
      );
      return;
    case 'of':
      for (const part of form.parts)
        build.distance(id, build.side(part, low), build.side(part, high), length, `${words} of ${part}`);
      return;
    case 'from': {
      const text = `${words} from ${planeName(form.from)} to ${planeName(form.to)}`;
      if (axisOf(form.from.plane) !== axis || axisOf(form.to.plane) !== axis) return;
      build.distance(id, build.plane(form.from), build.plane(form.to), length, text);
    }
  }
}

/** A notch's walls lie inward from the two sides of its corner by its legs. */
function addNotch(build: Builder, statement: NotchStatement): void {
  for (const part of statement.parts) {
    if (!build.planes.part(part)) continue;
    for (const side of statement.corner) {
      const leg = statement.legs.find(({ dimension }) => axisOfDimension(dimension) === axisOf(side));
      if (!leg) continue;
      const wall = { number: build.planes.addNotchWall(part, side, statement.corner), name: `${part}.notch.${side}` };
      const inward = isHigh(side) ? lowSide(axisOf(side)) : highSide(axisOf(side));
      build.beyond(
        statement.id,
        wall,
        build.side(part, side),
        inward,
        leg.length,
        `notch of ${part} ${leg.dimension} ${leg.length.text}`,
      );
    }
  }
}
