import { type Operation, type OtherWork, type Plan, type SetUp, say, type Text, type Wait } from '@dryfit/engine';
import { partNames } from '../print/order.js';
import { surfaceName, surfaceOn } from '../print/surface.js';
import type { PlannedJob } from './tables.js';

/** Why a set-up comes when it does, what must be done to its pieces before, and what only afterwards; a sentence each. */
export function orderWords(job: PlannedJob, setUp: SetUp): readonly Text[] {
  const named = (operation: Operation) =>
    `${piecesOf(job, [operation])} by the ${surfaceOn(operation.part, operation.half)}`;
  return [
    ...whyNow(job, setUp),
    ...setUp.operations.flatMap((operation) => otherWays(setUp, operation, named(operation))),
    ...otherWork(job, setUp),
  ];
}

/** The same of the pieces of one operation alone, without their names; nothing where nothing is to be said. */
export function orderOn(job: PlannedJob, setUp: SetUp, operation: Operation): readonly Text[] {
  const waits = setUp.waits.flatMap(({ order, first, next }): Text[] => {
    if (!next.includes(operation)) return [];
    return [[order.kind === 'late' ? 'Comes late: all else is milled first.' : `Only after ${piecesOf(job, first)}.`]];
  });
  const { before, after } = operation.needs;
  const words = (list: readonly OtherWork[]) => list.map((work) => otherWords(operation, work)).join('; ');
  return [
    ...waits,
    ...(before.length > 0 ? [[`Before this: ${words(before)}.`]] : []),
    ...(after.length > 0 ? [[`Only after this: ${words(after)}.`]] : []),
    ...otherWays(setUp, operation, ''),
  ];
}

/** What a set-up waits for by what the job asks, and why a setting is set up again. */
export function whyNow(job: PlannedJob, { again, waits, operations }: SetUp): readonly Text[] {
  const sentences = waits.map((wait): Text => {
    const next = piecesOf(job, wait.next);
    const here = wait.first.some(({ number }) => operations.some((one) => one.number === number));
    const now =
      wait.order.kind === 'late' ? `${next} ${comes(wait.next)} late` : `${next} after ${piecesOf(job, wait.first)}`;
    return [
      wait.order.kind === 'late'
        ? `${now}: everything else of the job is milled before${here ? ', so last of this set-up' : ''}.`
        : `${now}, as the job asks${here ? ': in this set-up as well' : ''}.`,
    ];
  });
  if (again === undefined) return sentences;
  return [...sentences, [`The same setting as in set-up ${again + 1}, set up again: other work had to come between.`]];
}

const comes = (operations: readonly Operation[]): string =>
  new Set(operations.flatMap(({ pieces }) => pieces.flatMap(({ parts }) => parts))).size === 1 ? 'comes' : 'come';

/** "lh, rh", with the cabinet where the job makes several. */
function piecesOf(job: PlannedJob, operations: readonly Operation[]): string {
  const parts = new Map<string, Map<string, Operation['part']>>();
  for (const { pieces } of operations)
    for (const { item, parts: ids } of pieces) {
      const made = job.items[item]?.result.fit;
      const own = parts.get(made?.name ?? '') ?? new Map<string, Operation['part']>();
      parts.set(made?.name ?? '', own);
      for (const part of made?.parts ?? []) if (ids.includes(part.id)) own.set(part.id, part);
    }
  const several = new Set(job.items.map(({ result }) => result.fit.name)).size > 1;
  return [...parts]
    .map(([cabinet, own]) => `${partNames([...own.values()])}${several ? ` of ${cabinet}` : ''}`)
    .join(', ');
}

/** What is milled otherwise than its joint asks, and how much further off that may come. */
function otherWays({ setting }: SetUp, { otherwise, part, half, joint }: Operation, named: string): readonly Text[] {
  if (!otherwise) return [];
  const how = [
    ...(otherwise.pose ? [`held with the reference ${setting.pose.reference}`] : []),
    ...(otherwise.datum ? [`measured from the ${surfaceName(part, half.datum)}`] : []),
    ...(otherwise.end ? [`measured from the ${surfaceName(part, half.from.side)}`] : []),
  ];
  const between = joint.entering === part.id ? joint.host : joint.entering;
  const words = otherwise.block
    ? `the block at the stop lets one stop serve both ends of ${between}`
    : `${how.join(', ')}, otherwise than the joint asks`;
  const adds: Text = otherwise.adds.isZero() ? [] : say`; its slots may lie ${otherwise.adds} further off`;
  return [[named === '' ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : `${named}: ${words}`, ...adds, '.']];
}

/** What is done to pieces elsewhere before they are milled here, or after; pieces of which the same is said go together. */
function otherWork(job: PlannedJob, { operations }: SetUp): readonly Text[] {
  const told = new Map<string, Operation[]>();
  for (const operation of operations)
    for (const [when, list] of [
      ['Before', operation.needs.before],
      ['Only afterwards', operation.needs.after],
    ] as const) {
      if (list.length === 0) continue;
      const words = `${when} ${list.map((work) => otherWords(operation, work)).join('; ')}`;
      told.set(words, [...(told.get(words) ?? []), operation]);
    }
  return [...told].map(([words, own]): Text => [`${piecesOf(job, own)}: ${words[0]?.toLowerCase()}${words.slice(1)}.`]);
}

function otherWords({ part }: Operation, work: OtherWork): string {
  switch (work.kind) {
    case 'mitre':
      return `saw the ${surfaceName(part, work.side)} to its mitre`;
    case 'cant':
      return 'cut the corner off';
    case 'recess':
      return `cut the ${work.cut} that the slots are in`;
    case 'band':
      return `band the ${surfaceName(part, work.side)} with ${work.band}`;
    case 'layers':
      return `glue ${work.material} up from its layers and cut it to size`;
  }
}

/** What a set-up waits for, as data: operations by the number of their set-up and their place in it. */
export function waitsJson(setUp: SetUp, plan: Plan) {
  return setUp.waits.map(({ order, first, next }: Wait) => ({
    asked: order.kind === 'late' ? ('late' as const) : ('before' as const),
    operations: next.map((operation) => setUp.operations.findIndex(({ number }) => number === operation.number)),
    after: first.flatMap(({ number }) => {
      const index = plan.setUps.findIndex(({ operations }) => operations.some((one) => one.number === number));
      const operation = plan.setUps[index]?.operations.findIndex((one) => one.number === number) ?? -1;
      return operation < 0 ? [] : [{ setUp: index + 1, operation }];
    }),
  }));
}
