import { constant } from '../number/quantity.js';
import { Rational } from '../number/rational.js';
import { axisOf, highSide, lowSide, type Side, thicknessAxis } from '../spec/sides.js';
import type { Fact, PartId, Toward } from '../spec/spec.js';
import { type Builder, negative } from './builder.js';
import { planeName } from './planes.js';

/** +1 where the direction runs with its axis. */
const DIRECTION: Record<Toward, 1 | -1> = {
  above: 1,
  below: -1,
  behind: 1,
  'in front of': -1,
  'right of': 1,
  'left of': -1,
};

/** Clear openings already rounded to their step, by the label of the unknown they take the place of. */
export type RoundedOpenings = ReadonlyMap<string, Rational>;

type OpeningsFact = Extract<Fact, { kind: 'openings' }>;

/** Adds the equations of one placing fact about `parts`, in order; `hosts` are those of the joint it stands in. */
export function addFact(
  build: Builder,
  statement: string,
  fact: Fact,
  parts: readonly PartId[],
  hosts: readonly PartId[],
  rounded: RoundedOpenings,
): void {
  switch (fact.kind) {
    case 'flush':
      for (const part of parts)
        for (const side of fact.sides)
          for (const host of hosts)
            build.same(statement, build.side(part, side), build.side(host, side), `${part} flush ${side} with ${host}`);
      return;
    case 'flush with':
    case 'against':
      for (const part of parts) {
        const words = fact.kind === 'against' ? 'against' : 'flush with';
        build.same(
          statement,
          build.side(part, fact.side),
          build.plane(fact.plane),
          `${part}.${fact.side} ${words} ${planeName(fact.plane)}`,
        );
      }
      return;
    case 'set back':
    case 'proud':
      for (const part of parts) {
        const by = fact.kind === 'proud' ? fact.by : negative(fact.by);
        const words = fact.kind === 'proud' ? 'proud' : 'set back';
        const text = `${part}.${fact.side} ${words} ${fact.by.text} from ${planeName(fact.plane)}`;
        build.beyond(statement, build.side(part, fact.side), build.plane(fact.plane), fact.side, by, text);
      }
      return;
    case 'at':
      parts.forEach((part, i) => {
        const by = fact.by.length === 1 ? fact.by[0] : fact.by[i];
        if (by === undefined) return;
        const text = `${part}.${fact.side} ${by.text} ${fact.toward} ${planeName(fact.plane)}`;
        const length = DIRECTION[fact.toward] === 1 ? by : negative(by);
        build.distance(statement, build.plane(fact.plane), build.side(part, fact.side), length, text);
      });
      return;
    case 'centred': {
      const host = build.planes.part(fact.low);
      if (host === undefined) return;
      const axis = thicknessAxis(host.attitude);
      for (const part of parts)
        build.general(
          statement,
          [
            [build.side(part, lowSide(axis)), 1],
            [build.side(part, highSide(axis)), 1],
            [build.side(fact.low, highSide(axis)), -1],
            [build.side(fact.high, lowSide(axis)), -1],
          ],
          constant(Rational.ZERO),
          `${part} centred between ${fact.low} and ${fact.high}`,
        );
      return;
    }
    case 'openings':
      addOpenings(build, statement, fact, parts, rounded.get(openingLabel(statement, fact)));
  }
}

/** n parts leave n + 1 openings, all one unknown gap; with a rounded gap the last opening takes the rest. */
function addOpenings(
  build: Builder,
  statement: string,
  fact: OpeningsFact,
  parts: readonly PartId[],
  rounded: Rational | undefined,
): void {
  const axis = axisOf(fact.low.plane);
  const low: Side = lowSide(axis);
  const high: Side = highSide(axis);
  const text = `openings equal between ${planeName(fact.low)} and ${planeName(fact.high)}`;
  const below = [build.plane(fact.low), ...parts.map((part) => build.side(part, high))];
  const above = [...parts.map((part) => build.side(part, low)), build.plane(fact.high)];
  if (rounded !== undefined) {
    for (let i = 0; i < parts.length; i++) {
      const [from, to] = [below[i], above[i]];
      if (from && to) build.distance(statement, from, to, constant(rounded), text);
    }
    return;
  }
  const gap = { number: build.planes.addLength(openingLabel(statement, fact), axis), name: 'opening' };
  for (let i = 0; i <= parts.length; i++) {
    const [from, to] = [below[i], above[i]];
    if (from && to)
      build.general(
        statement,
        [
          [to, 1],
          [from, -1],
          [gap, -1],
        ],
        constant(Rational.ZERO),
        text,
      );
  }
}

/** Label of the unknown that stands for the common opening that a fact of a statement asks for. */
export const openingLabel = (statement: string, fact: OpeningsFact): string =>
  `opening of ${statement} between ${planeName(fact.low)} and ${planeName(fact.high)}`;
