import {
  formatLength,
  type HistoryStep,
  type Holding,
  historiesOf,
  holdingOf,
  inRow,
  type LengthFormat,
  type Operation,
  type PartId,
  Rational,
  type SetUp,
  type Text,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { alikeWords } from '../plan/alike.js';
import { placeMilled, turnShort } from '../plan/history.js';
import { hasFences, type shopOf } from '../plan/holding.js';
import type { PlannedJob } from '../plan/tables.js';
import { printText } from '../print/length.js';
import { partNames } from '../print/order.js';
import { datumWords, placeOn } from '../print/surface.js';

/**
 * What is pressed where before the clamp goes on: "Press rear edge to the spacer, bottom face to the bed. CLAMP FLAT.", the
 * latter where it is not told of all pieces of the set-up (`holdWords`).
 */
export function pressWords(
  operation: Operation,
  holding: Holding,
  setUp: SetUp,
  shop: ReturnType<typeof shopOf>,
  format: LengthFormat,
): string {
  const { stop } = setUp.setting;
  const { part, half } = operation;
  const { along, across, flat } = holding;
  const [datum, reference] = [datumWords(part, half, along.side), placeOn(part, half, across.side)];
  const first = along.to === 'marks' ? `Mark out from the ${datum}` : `Press ${datum} to the ${along.to}`;
  const block = half.stop?.block ? 'block at the ' : '';
  const at: Text = stop ? [stop, ' from the '] : ['at the '];
  const second: Text =
    across.to === 'machine'
      ? [`; machine’s base on ${reference}`]
      : across.to === 'marks'
        ? ['; straight edge for the machine’s base ', ...at, reference]
        : [`${along.to === 'marks' ? '; press' : ','} ${reference} to the ${block}${across.to}`];
  const alone = flat !== undefined && !allFlat(setUp, shop);
  return plain([first, ...second, '.', ...(alone ? [' CLAMP FLAT', ...cupWords(holding), '.'] : [])], format);
}

/** Lengths as the sheet’s large figures show them: what rounding takes away is told with those. */
const plain = (text: Text, format: LengthFormat): string =>
  text.map((one) => (one instanceof Rational ? formatLength(one, format).text : printText([one], format))).join('');

const cupWords = ({ flat }: Holding): Text => (flat?.because === 'cup' ? [' (cup up to ', flat.most, ')'] : []);

const allFlat = (setUp: SetUp, shop: ReturnType<typeof shopOf>): boolean =>
  setUp.operations.every((operation) => holdingOf(operation, setUp, shop).flat !== undefined);

/** What holds for every piece of a set-up: "CLAMP the piece FLAT. SLIDE the machine on its base from line to line." */
export function holdWords(setUp: SetUp, shop: ReturnType<typeof shopOf>, format: LengthFormat): string {
  const [first] = setUp.operations;
  if (!first) return '';
  const holding = holdingOf(first, setUp, shop);
  const flat = allFlat(setUp, shop) ? plain([' FLAT', ...cupWords(holding)], format) : '';
  const hold = { beam: ' under the jig’s beam', 'jig clamps': ' with the jig’s clamps', 'loose clamps': '' }[
    holding.by
  ];
  const machine =
    holding.machine === 'slides'
      ? 'SLIDE the machine on its base from line to line'
      : 'LIFT the machine and set it on anew at each line';
  return `CLAMP the piece${flat}${hold}. ${machine}.`;
}

/** Which pieces lie on the bed at once: "On the bed with it, 2 times: rh at the right fence." */
export function besideWords(
  { items }: PlannedJob,
  operation: Operation,
  { beside, alike }: Pick<SetUp, 'beside' | 'alike'>,
  format: LengthFormat,
): string {
  const of = ({ pieces: [piece] }: Operation): string => {
    const made = items.length > 1 ? items[piece?.item ?? 0] : undefined;
    return made ? ` of ${printText(cabinetLabel(made.result.fit), format)}` : '';
  };
  const told = beside.flatMap(({ left, right, times }) => {
    const other = left === operation ? right : right === operation ? left : undefined;
    const often = times === 1 ? 'once' : `${times} times`;
    return other ? [`${often}: ${other.part.id}${of(other)} at the ${other.half.hand} fence`] : [];
  });
  const rows = alike.flatMap((row) =>
    inRow(row, operation) > 0
      ? [
          `Lay ${plain(
            alikeWords(row, (one) => [`${one.pieces[0]?.parts.join(', ')}${of(one)}`]),
            format,
          )}.`,
        ]
      : [],
  );
  return [...(told.length === 0 ? [] : [`On the bed with it, ${told.join(', ')}.`]), ...rows].join(' ');
}

/** A step of a piece's history among all of its steps. */
interface At {
  readonly steps: readonly HistoryStep[];
  readonly index: number;
}

/** Where pieces stand in their history, found by what is milled into them. */
export class Histories {
  private readonly steps = new Map<string, At>();

  constructor(
    private readonly job: PlannedJob,
    private readonly format: LengthFormat,
  ) {
    for (const { pieces, steps } of historiesOf(job.plan.setUps))
      for (const [index, { setUp, operation }] of steps.entries())
        for (const { item, parts } of pieces)
          for (const part of parts) this.steps.set(keyOf(setUp, operation, item, part), { steps, index });
  }

  /** "Step 2 of 3. After left end, this set-up: turned end for end. Later: right end, set-up 4." of parts of one cabinet. */
  words(setUp: SetUp, operation: Operation, item: number, parts: readonly PartId[]): string {
    const at = this.job.plan.setUps.indexOf(setUp);
    const told = new Map<string, PartId[]>();
    for (const part of parts) {
      const found = this.steps.get(keyOf(at, operation, item, part));
      const words = found ? this.told(found) : '';
      told.set(words, [...(told.get(words) ?? []), part]);
    }
    if (told.size === 1) return [...told.keys()][0] ?? '';
    const all = this.job.items[item]?.result.fit.parts ?? [];
    return [...told]
      .map(([words, own]) => `${partNames(all.filter(({ id }) => own.includes(id)))}: ${words}`)
      .join(' ');
  }

  private told({ steps, index }: At): string {
    const [before, own, next] = [steps[index - 1], steps[index], steps[index + 1]];
    if (!own) return '';
    if (steps.length === 1) return 'Its only set-up.';
    const place = (step: HistoryStep): string =>
      `${plain(placeMilled(step), this.format)}, ${step.setUp === own.setUp ? 'this set-up' : `set-up ${step.setUp + 1}`}`;
    const fence = own.fenceChanges ? `, other ${hasFences(this.job) ? 'fence' : 'hand'}` : '';
    const was = before ? ` After ${place(before)}: ${turnShort(own)}${fence}.` : '';
    return `Step ${index + 1} of ${steps.length}.${was}${next ? ` Later: ${place(next)}.` : ''}`;
  }
}

const keyOf = (setUp: number, { number }: Operation, item: number, part: PartId): string =>
  `${setUp} ${number} ${item} ${part}`;
