import type { Setting } from './setting.js';
import type { Stages } from './stages.js';
import { type Class, keyed, type Visit } from './visit.js';

/** Choices that are tried one by one; where there are more, the best found is made better a setting at a time. */
const MOST_CHOICES = 64;

/** Operations by the ways they can be set up in: those of which one serves whatever another does are left out. */
export function classesOf(ways: readonly (readonly Setting[])[], stages: Stages): readonly Class[] {
  const classes = new Map<string, Class>();
  ways.forEach((own, number) => {
    const visits = own.map((setting): Visit => ({ setting, stage: stages.of[number] ?? 0 }));
    const one: Class = keyed(visits);
    if (one.size > 0) classes.set([...one.keys()].sort().join('\n'), one);
  });
  // Those with least choice first, so that what they need serves the others. One that offers all that another does is
  // served with it.
  const all = [...classes.values()].sort((a, b) => a.size - b.size);
  return all.filter((one, i) => !all.slice(0, i).some((other) => [...other.keys()].every((key) => one.has(key))));
}

/** Choices of settings that serve every class; all of those from which none can be left out are among them, if they are all. */
export function choicesOf(classes: readonly Class[]): {
  readonly choices: readonly (readonly Visit[])[];
  readonly areAll: boolean;
} {
  const found = new Map<string, Class>();
  let areAll = true;
  const visit = (at: number, chosen: Class): void => {
    if (found.size >= MOST_CHOICES) {
      areAll = false;
      return;
    }
    const open = classes.findIndex((one, i) => i >= at && ![...one.keys()].some((key) => chosen.has(key)));
    const next = classes[open];
    if (!next) {
      found.set([...chosen.keys()].sort().join('\n'), chosen);
      return;
    }
    for (const [key, one] of next) visit(open + 1, new Map([...chosen, [key, one]]));
  };
  visit(0, new Map());
  return { choices: [...found.values()].map((chosen) => [...chosen.values()]), areAll };
}

/** With one visit more, and without those that are then not needed. */
export function withoutNeedless(classes: readonly Class[], now: Class, key: string, visit: Visit): readonly Visit[] {
  const kept = new Map([...now, [key, visit]]);
  const serves = (chosen: Class) => classes.every((one) => [...one.keys()].some((own) => chosen.has(own)));
  for (const old of now.keys()) {
    const fewer = new Map(kept);
    fewer.delete(old);
    if (serves(fewer)) kept.delete(old);
  }
  return [...kept.values()];
}
