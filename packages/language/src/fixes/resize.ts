import {
  AXES,
  type Axis,
  type FittedPart,
  highSide,
  lowSide,
  numbersThatMove,
  Rational,
  say,
  type Text,
} from '@dryfit/engine';
import type { Case, Cure, Fix } from './fix.js';
import { lengthIn } from './support/figures.js';
import { because, MILLING, SIZES } from './support/follow.js';
import { cureByNumber, rounded } from './support/numbers.js';

interface Wish {
  readonly part: string;
  readonly axis: Axis;
  readonly by: Rational;
  readonly so: Text;
}

/** Changes the number behind a size: a part that is too large for sheet or jig, too small to be, or nearly like another. */
export const resize: Fix = {
  name: 'resize',
  codes: ['sheet-too-short', 'too-big-for-jig', 'size-not-positive', 'look-alike'],
  most: 2,
  mayFollow: because(
    'what has another size is milled elsewhere, and may come up against something there',
    ...MILLING,
    ...SIZES,
  ),
  *offer(about): Iterable<Cure> {
    const spec = about.result?.spec;
    if (!spec) return;
    for (const { part, axis, by, so } of wishes(about)) {
      const [high, low] = [
        { part, side: highSide(axis) },
        { part, side: lowSide(axis) },
      ];
      for (const number of numbersThatMove(spec, high, low, by)) {
        const tries = about.finding.code === 'look-alike' ? [number] : rounded(number, about.unit);
        for (const one of tries) yield* cureByNumber(about, one, so);
      }
    }
  },
};

function* wishes(about: Case): Iterable<Wish> {
  const { finding, result } = about;
  const parts = (finding.about.parts ?? []).flatMap((id) => result?.fit.parts.find((part) => part.id === id) ?? []);
  const over = lengthIn(finding.data?.over);
  const extent = lengthIn(finding.data?.extent);
  for (const part of parts) {
    for (const axis of AXES) {
      const own = part.extent[axis];
      if (!own) continue;
      if (finding.code === 'look-alike') yield* alike(part, axis, parts);
      if (over) yield* shorter(part.id, axis, over);
      if (finding.code === 'sheet-too-short') yield* ontoSheet(about, part, axis, own);
      if (extent?.equals(own))
        for (const size of LARGE_ENOUGH)
          yield { part: part.id, axis, by: size.sub(own), so: say`${part.id} is ${size} that way` };
    }
  }
}

/** Sizes tried for what would be smaller than nothing, mm. */
const LARGE_ENOUGH = [100, 200, 400].map((size) => Rational.of(size));

function* shorter(part: string, axis: Axis, over: Rational): Iterable<Wish> {
  yield { part, axis, by: over.neg(), so: say`${part} fits` };
}

function* ontoSheet(about: Case, part: FittedPart, axis: Axis, own: Rational): Iterable<Wish> {
  const shop = about.result?.spec.shop.materials;
  const material = shop?.get(part.material);
  const sheets = [material, ...(material?.layers ?? []).map((name) => shop?.get(name))].flatMap(
    (one) => one?.sheet ?? [],
  );
  const trim = material?.oversize ?? Rational.ZERO;
  for (const { length, width } of sheets)
    for (const most of [length, width].map((size) => size.sub(trim)))
      if (own.gt(most)) yield* shorter(part.id, axis, own.sub(most));
}

/** As large as the other one. */
function* alike(part: FittedPart, axis: Axis, parts: readonly FittedPart[]): Iterable<Wish> {
  for (const other of parts) {
    const size = other.extent[axis];
    const own = part.extent[axis];
    if (other === part || !size || !own || size.equals(own)) continue;
    yield { part: part.id, axis, by: size.sub(own), so: say`${part.id} is as large as ${other.id}` };
  }
}
