import { holdingOf, type Operation, type Plan, type Rational, type SetUp, say, type Text } from '@dryfit/engine';
import { cabinetLabel, type Item } from '../batch.js';
import { MILLING_CAUTIONS } from '../cautions.js';
import { partNames } from '../print/order.js';
import { surfaceName, surfaceOn } from '../print/surface.js';
import { type Cell, type Column, count, lengths, type Table, text } from '../table/table.js';
import { alikeWords } from './alike.js';
import { historyTable } from './history.js';
import { acrossWords, alongWords, clampingWords, holdingNotes, shopOf, weightWords } from './holding.js';
import { orderWords } from './order.js';
import { spacerCounts, spacerNotes, spacersOf } from './spacers.js';
import {
  CHANGE_WORDS,
  heldWords,
  listed,
  minutes,
  patternWords,
  slotsWord,
  spacerWords,
  stopWords,
  surfaceWords,
} from './words.js';

/** A plan to be printed: what it is for, and the cabinets it mills. */
export interface PlannedJob {
  readonly title: Text;
  readonly items: readonly Item[];
  readonly plan: Plan;
  /** Errors found in what it is made from. */
  readonly errors: number;
}

/** The plan as tables: the set-ups in their order, then what is milled in each. */
export function planTables(job: PlannedJob): readonly Table[] {
  const setUps = job.plan.setUps.map((setUp, i) => setUpTable(job, setUp, i));
  return [overview(job), ...setUps, ...(setUps.length > 0 ? [historyTable(job)] : [])];
}

const warning = ({ errors }: PlannedJob): string | undefined =>
  errors === 0
    ? undefined
    : `${errors} ${errors === 1 ? 'error was' : 'errors were'} found; do not cut or mill from this plan.`;

function overview(job: PlannedJob): Table {
  const { plan, title } = job;
  return {
    name: 'set-ups',
    title: ['Set-ups: ', ...title],
    warning: warning(job),
    columns: OVERVIEW,
    rows: plan.setUps.map((setUp, i): Cell[] => [
      count(i + 1),
      text(setUp.setting.machine),
      text([setUp.setting.connector, ' ', setUp.setting.depth, ' deep']),
      text(surfaceWords(setUp.setting)),
      text(patternWords(setUp.setting)),
      text(spacerWords(setUp.setting)),
      text(stopWords(setUp.setting)),
      text(setUp.changed.map((one) => CHANGE_WORDS[one]).join(', ')),
      text(minutes(setUp.change)),
      count(setUp.operations.reduce((sum, operation) => sum + operation.count, 0)),
      count(setUp.loads),
      count(setUp.slots),
      text(minutes(setUp.mill)),
    ]),
    notes: overviewNotes(plan),
    cautions: plan.setUps.length === 0 ? [] : MILLING_CAUTIONS,
  };
}

const OVERVIEW: readonly Column[] = [
  { heading: 'Set-up', kind: 'count' },
  { heading: 'Machine', kind: 'text' },
  { heading: 'Connector', kind: 'text' },
  { heading: 'Slots in', kind: 'text' },
  { heading: 'Pattern', kind: 'text' },
  { heading: 'Spacer', kind: 'text' },
  { heading: 'Stop', kind: 'text' },
  { heading: 'Change', kind: 'text' },
  { heading: 'Change min', kind: 'text' },
  { heading: 'Pieces', kind: 'count' },
  { heading: 'Laid down', kind: 'count' },
  { heading: 'Slots', kind: 'count' },
  { heading: 'Mill min', kind: 'text' },
];

function overviewNotes({ setUps, change, atLeast, proven, ranOut, mill, naive, grouped, changes }: Plan): Text[] {
  if (setUps.length === 0) return [['There is nothing to mill.']];
  const bound = proven
    ? 'no choice of settings and no order takes less'
    : `no choice of settings and no order takes less than ${minutes(atLeast)}${ranOut ? '; the time was up before more was proven' : ''}`;
  const spacers = spacersOf(setUps);
  const named = setUps.length === 1 ? 'one set-up' : `${setUps.length} set-ups`;
  const written = changes.written.length === 0 ? 'the language’s own figures' : 'the shop’s figures';
  return [
    [`${named}: ${minutes(change)} min of changing (${bound}) and ${minutes(mill)} min of milling, by ${written}.`],
    [
      `Cabinet by cabinet: ${naive.setUps} set-ups, ${minutes(naive.change)} min of changing${saved(naive.change, change)}.`,
    ],
    [
      `Like settings together, in the order they come: ${grouped.setUps} set-ups, ${minutes(grouped.change)} min${saved(grouped.change, change)}.`,
    ],
    ...(spacers.length > 0 ? [['Spacers of the shop: ', ...spacerCounts(spacers), '.']] : []),
    ['"Laid down": pieces that lie beside each other are laid down at once.'],
  ];
}

function saved(other: Rational, own: Rational): string {
  const less = other.sub(own);
  if (less.sign() <= 0 || other.isZero()) return '';
  return `; this plan takes ${Math.round(less.div(other).toNumber() * 100)} % less`;
}

/** What goes to the stop: "from the bottom end", "from the bottom end, a block of 17.7 between". */
function stopFrom({ half: { stop }, part }: Operation): Text {
  if (!stop || (stop.at.isZero() && !stop.block)) return [];
  const from = `from the ${surfaceName(part, stop.end)}`;
  return stop.block ? say`${from}, a block of ${stop.block.width} between` : [from];
}

function setUpTable(job: PlannedJob, setUp: SetUp, index: number): Table {
  const { setting, operations, beside, alike } = setUp;
  const several = job.items.length > 1;
  const rows = operations.flatMap((operation) =>
    operation.pieces.map(({ item, parts, count: pieces }): Cell[] => {
      const { half, part } = operation;
      const holding = holdingOf(operation, setUp, shopOf(job));
      const made = job.items[item];
      const own = made?.result.fit.parts.filter(({ id }) => parts.includes(id)) ?? [];
      return [
        text(several && made ? cabinetLabel(made.result.fit) : ''),
        text(partNames(own)),
        count(pieces),
        text(surfaceOn(part, half)),
        text(heldWords(operation, setting)),
        text(alongWords(operation, holding)),
        text(acrossWords(operation, holding, setting)),
        text(clampingWords(operation, holding)),
        lengths(half.slots.map(({ fromZero }) => fromZero)),
        lengths(half.slots.map(({ fromDatum }) => fromDatum)),
        text(stopFrom(operation)),
        text(weightWords(operation.weight, holding.people, 'mm')),
      ];
    }),
  );
  const named = ({ part, half, pieces }: Operation): Text => {
    const made = several ? job.items[pieces[0]?.item ?? 0] : undefined;
    const by = `${part.id} by its ${surfaceOn(part, half)}`;
    return made ? [by, ' of ', ...cabinetLabel(made.result.fit)] : [by];
  };
  const pairs = beside.map(({ left, right, times }): Text => {
    const often = times === 1 ? 'once' : `${times} times`;
    return [
      `Beside each other ${often}: `,
      ...named(left),
      ' at the left fence, ',
      ...named(right),
      ' at the right one.',
    ];
  });
  return {
    name: `set-up-${index + 1}`,
    title: [
      `Set-up ${index + 1}: ${setting.machine}, ${setting.connector} `,
      setting.depth,
      ` deep, ${slotsWord(setUp)} in the ${surfaceWords(setting)}, pattern `,
      ...patternWords(setting),
      ', spacer ',
      ...spacerWords(setting),
      ', stop ',
      ...stopWords(setting),
    ],
    warning: warning(job),
    columns: IN_SET_UP,
    rows,
    notes: [
      ...orderWords(job, setUp),
      ['Lines set: ', ...listed(setting.lines), ' from the fence.'],
      ...spacerNotes(setUp),
      ...holdingNotes(job, setUp),
      ...pairs,
      ...alike.map((one): Text => [...named(one.operation), ': ', ...alikeWords(one, named), '.']),
    ],
    cautions: MILLING_CAUTIONS,
  };
}

const IN_SET_UP: readonly Column[] = [
  { heading: 'Cabinet', kind: 'text', optional: true },
  { heading: 'Part', kind: 'text' },
  { heading: 'Pieces', kind: 'count' },
  { heading: 'Mill into', kind: 'text' },
  { heading: 'Held', kind: 'text' },
  { heading: 'Datum', kind: 'text' },
  { heading: 'Reference', kind: 'text' },
  { heading: 'Clamp', kind: 'text', optional: true },
  { heading: 'Lines used', kind: 'lengths' },
  { heading: 'From datum', kind: 'lengths' },
  { heading: 'Stop', kind: 'text', optional: true },
  { heading: 'Weight', kind: 'text', optional: true },
];
