import { axisOf, type FittedPart, outward, Rational, thirdAxis } from '@dryfit/engine';
import type { SceneCut } from '../scene.js';
import { INDEX, planeOf, triple } from './figures.js';
import type { Places } from './places.js';

/** The corner a cant cuts off, as the box around it. */
export function cant(
  { id, cant: cut, box }: FittedPart,
  places: Places,
  print: (length: Rational) => string,
): SceneCut[] {
  if (!cut || !box) return [];
  const { corner, legs, source } = cut;
  const [lo, hi] = [triple(box.lo), triple(box.hi)].map((p) => [...p] as [number, number, number]);
  if (!lo || !hi) return [];
  corner.forEach((side, i) => {
    const inner = planeOf(box, side)
      .sub((legs[i] ?? legs[0]).mul(Rational.of(outward(side))))
      .toNumber();
    (outward(side) === 1 ? lo : hi)[INDEX[axisOf(side)]] = inner;
  });
  const [first, second] = corner;
  return [
    {
      shape: `cut cant ${first} ${second} of ${id}`,
      label: `cant of ${id} at the ${first} ${second}: ${print(legs[0])} in from the ${first}, ${print(legs[1])} from the ${second}`,
      places: places.statement(source, [id]),
      kind: 'cant',
      surface: first,
      box: { lo, hi },
      run: thirdAxis(axisOf(first), axisOf(second)) ?? 'z',
      outer: second,
      legs: corner.map((from, i) => ({ from, length: print(legs[i] ?? legs[0]) })),
    },
  ];
}
