import { Rational } from '../number/rational.js';
import type { Changes } from '../spec/stock.js';
import { CHANGE_OVERS, type ChangeOver, changed, type Setting } from './setting.js';
import type { Class, Visit } from './visit.js';

/**
 * Minutes that the settings themselves force, whatever their order: each thing that is changed by itself has to be changed
 * once at least for every way it stands in.
 * @param visits that are all made
 */
export const forcedBy = (visits: readonly Visit[], changes: Changes): Rational =>
  forcedOf(
    visits.map((visit) => [visit]),
    changes,
  );

/** The same for classes of which one visit each is made: of those that share no way for a thing to stand, each asks for its own. */
export const forcedOfClasses = (classes: readonly Class[], changes: Changes): Rational =>
  forcedOf(
    classes.map((one) => [...one.values()]),
    changes,
  );

function forcedOf(classes: readonly (readonly Visit[])[], changes: Changes): Rational {
  const ways = [...STANDS].map(([what, stands]) => {
    const options = classes.map((one) => new Set(one.map(({ setting }) => stands(setting))));
    return changes[what].mul(Rational.of(apart(options)));
  });
  return Rational.sum(ways);
}

/** How many of the sets, at least, no two of which have anything in common; those with what an empty bench has count for nothing. */
function apart(sets: readonly ReadonlySet<string | undefined>[]): number {
  const taken = new Set<string>();
  let count = 0;
  for (const one of [...sets].sort((a, b) => a.size - b.size)) {
    if (one.has(undefined) || [...one].some((word) => word !== undefined && taken.has(word))) continue;
    for (const word of one) if (word !== undefined) taken.add(word);
    count++;
  }
  return count;
}

/** How a thing stands in a setting; undefined where it stands so on an empty bench. */
const STANDS: ReadonlyMap<ChangeOver, (setting: Setting) => string | undefined> = new Map(
  CHANGE_OVERS.map((what) => [
    what,
    (setting: Setting) => (changed(undefined, setting).includes(what) ? standing(what, setting) : undefined),
  ]),
);

function standing(what: ChangeOver, { machine, depth, base, pose, lines, spacer, stop }: Setting): string {
  switch (what) {
    case 'machine':
      return machine;
    // With the machine its depth and its base are set anew.
    case 'depth':
      return `${machine} ${depth}`;
    case 'base':
      return `${machine} ${base}`;
    case 'pose':
      return `${pose.surface} ${pose.reference}`;
    case 'pattern':
      return lines.join(' ');
    case 'spacer':
      return `${spacer.kind} ${spacer.kind === 'stock' ? spacer.stack.join('+') : spacer.kind === 'cut' ? spacer.width : ''}`;
    case 'stop':
      return String(stop);
  }
}
