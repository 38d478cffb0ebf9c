import { type Attitude, type Axis, type Side, thicknessAxis } from '@dryfit/engine';
import { type Cabinet, isCantLine, isJoint, isLiteral, isNotchLine, isPartLine } from '../generated/ast.js';
import { readWhole } from '../parser/numbers.js';
import { remember } from '../remember.js';

/** How a part stands, and what walls it has beside its sides. */
export interface Standing {
  readonly name: string;
  readonly attitude: Attitude | undefined;
  readonly material: string | undefined;
  /** First and last number of parts that have one; undefined ends are written as more than a number. */
  readonly numbers?: readonly [number | undefined, number | undefined] | undefined;
  /** Offset behind the head of each joint the part enters. */
  readonly enters: readonly number[];
  /** Others are joined to it. */
  readonly hosts: boolean;
  readonly grooved: boolean;
  /** Sides its notches are cut in from, once for each. */
  readonly notched: readonly Side[];
  readonly canted: boolean;
  /** Stands along a cant. */
  readonly turned: boolean;
}

const known = new WeakMap<Cabinet, ReadonlyMap<string, Standing>>();

/** The parts of a cabinet by name, in the order written, as far as the text can be read. */
export function standingsOf(cabinet: Cabinet | undefined): ReadonlyMap<string, Standing> {
  return cabinet ? remember(known, cabinet, () => collect(cabinet)) : new Map();
}

/** The axis a part's thickness lies along. */
export const thicknessOf = ({ attitude }: Standing): Axis | undefined => attitude && thicknessAxis(attitude);

type Draft = { -readonly [K in keyof Standing]: Standing[K] };

function collect(cabinet: Cabinet): ReadonlyMap<string, Standing> {
  const parts = new Map<string, Draft>();
  for (const line of cabinet.items) {
    if (!isPartLine(line)) continue;
    const end = (expression: unknown) => (isLiteral(expression) ? readWhole(expression.text) : undefined);
    for (const { name } of line.parts) {
      if (name === undefined || parts.has(name)) continue;
      parts.set(name, {
        name,
        attitude: line.attitude,
        material: line.material?.$refText,
        numbers: line.from ? [end(line.from), end(line.to)] : undefined,
        enters: [],
        hosts: false,
        grooved: false,
        notched: [],
        canted: false,
        turned: line.on !== undefined,
      });
    }
  }
  const found = (refs: readonly { readonly part?: { readonly $refText: string } }[]) =>
    refs.map(({ part }) => parts.get(part?.$refText ?? '')).filter((part) => part !== undefined);
  for (const item of cabinet.items) {
    if (isJoint(item)) {
      for (const part of found(item.entering)) {
        part.enters = [...part.enters, item.$cstNode?.offset ?? -1];
        part.grooved ||= item.verb === 'groove';
      }
      const ends = [...item.between.flatMap(({ low, high }) => [low, high]), ...item.to];
      for (const part of found(ends.flatMap((end) => end?.ref ?? []))) part.hosts = true;
    } else if (isCantLine(item)) {
      for (const part of found(item.parts)) part.canted = true;
    } else if (isNotchLine(item)) {
      const sides = [item.first, item.second].filter((side) => side !== undefined);
      for (const part of found(item.parts)) part.notched = [...part.notched, ...sides];
    }
  }
  return parts;
}
