import { type Pack, Rational, type Sold, say } from '@dryfit/engine';
import type { AstNode } from 'langium';
import { settingWrong } from '../../checks/setting-wrong.js';
import type { PackSize, Packs } from '../../generated/ast.js';
import { FOOT, POUND, plainNumber } from '../figure.js';
import type { Settings } from '../settings.js';
import { textOf } from '../source.js';

/** An entry that says how it is bought. */
interface SoldNode extends AstNode {
  readonly name?: string;
  readonly spare: readonly string[];
}

/** How an entry says what it is sold by: the property that keeps it, its word, and one that could be written. */
interface Way {
  readonly property: 'packs' | 'rolls';
  readonly example: string;
}

const HUNDRED = Rational.of(100);
const GRAMS_IN_KG = Rational.of(1000);

/** The units of a pack, each as what packs are counted in: pieces, mm of a roll, grams. An ounce is a sixteenth of a pound. */
const UNITS: Readonly<Record<string, Rational>> = {
  m: Rational.of(1000),
  ft: FOOT.mul(Rational.of(1000)),
  g: Rational.ONE,
  kg: GRAMS_IN_KG,
  oz: POUND.mul(GRAMS_IN_KG).div(Rational.of(16)),
  lb: POUND.mul(GRAMS_IN_KG),
};

/** The packs an entry is sold in, and what is bought to spare; a size that cannot be is left out and told. */
export function readSold<N extends SoldNode>(settings: Settings<N>, written: readonly Packs[], way: Way): Sold {
  const packs = settings.one(written, way.property, way.property);
  return { packs: packs && readPacks(settings, packs.sizes, way), spare: readSpare(settings) };
}

function readPacks<N extends SoldNode>(settings: Settings<N>, sizes: readonly PackSize[], way: Way): readonly Pack[] {
  const packs = new Map<string, Pack>();
  for (const node of sizes) {
    const pack = readPack(settings, node, way);
    if (!pack) continue;
    const key = pack.size.toString();
    const other = packs.get(key);
    if (other === undefined) packs.set(key, pack);
    else
      settings.wrong(
        node,
        say`${way.property} of ${pack.text} are written twice for ${settings.what}${other.text === pack.text ? '' : `: ${other.text} is as much`}`,
        say`Take one of the two out.`,
      );
  }
  return [...packs.values()];
}

function readPack<N extends SoldNode>(settings: Settings<N>, node: PackSize, way: Way): Pack | undefined {
  const { amount, unit } = node;
  // What is missing is told as a fault of the text.
  if (amount === undefined) return undefined;
  const value = plainNumber(amount);
  const scale = unit === undefined ? Rational.ONE : UNITS[unit];
  const whole = unit !== undefined || value?.isInteger() === true;
  if (value && scale && value.sign() > 0 && whole) return { size: value.mul(scale), text: textOf(node) };
  const kind = unit === undefined ? 'a whole number of pieces above 0' : `a figure above 0 in ${unit}`;
  settings.wrong(
    node,
    say`${way.property} of ${settings.what} hold ${kind}, and ${amount} is none`,
    say`Write what stands on the pack, as in ${way.example}.`,
  );
  return undefined;
}

/** What is bought beyond the need, in parts of it. */
function readSpare<N extends SoldNode>(settings: Settings<N>): Rational | undefined {
  const { node } = settings;
  const text = settings.one(node.spare, 'spare', 'spare');
  const value = text === undefined ? undefined : plainNumber(text);
  if (text === undefined || value?.le(HUNDRED)) return value?.div(HUNDRED);
  settings.report(
    settingWrong({
      source: settings.places.property(node, 'spare'),
      message: say`the spare of ${settings.what} is from 0 to 100 % of what is needed, and ${text} is not`,
      cure: say`Write it as a plain number, as in spare 5 %.`,
    }),
  );
  return undefined;
}
