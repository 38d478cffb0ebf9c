import { type Finding, type Glue, Rational, say } from '@dryfit/engine';
import { settingWrong } from '../../checks/setting-wrong.js';
import type { Glue as GlueNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { FOOT, POUND, plainNumber } from '../figure.js';
import { Settings } from '../settings.js';
import { readSold } from './sold.js';

/** The units of a spread, in grams on a square metre. An ounce is a sixteenth of a pound. */
const UNITS: Readonly<Record<string, Rational>> = {
  'g/m2': Rational.ONE,
  'oz/ft2': POUND.mul(Rational.of(1000)).div(Rational.of(16)).div(FOOT.mul(FOOT)),
};

/**
 * What is let pass as a spread, g/m²: about a fiftieth of a mm of glue, and a mm. Common practice, no source; far enough out
 * that only a slip of the unit falls beyond them.
 */
const THINNEST = Rational.of(20);
const THICKEST = Rational.of(1000);

/** The glue a shop uses; undefined where its spread cannot be told. */
export function readGlue(node: GlueNode, unit: Unit, report: (finding: Finding) => void): Glue | undefined {
  const settings = new Settings(node, `glue ${node.name}`, unit, report);
  const spread = readSpread(settings);
  const sold = readSold(settings, node.packs, { property: 'packs', example: 'packs of 750 g, 5 kg' });
  const provenance = settings.one(node.source, 'source', 'source');
  if (!spread || node.name === undefined) return undefined;
  return { name: node.name, source: settings.places.of(node), provenance, spread, ...sold };
}

function readSpread(settings: Settings<GlueNode>): Rational | undefined {
  const written = settings.needed(settings.node.spread, 'spread', 'spread', 'spread 150 g/m2');
  const scale = UNITS[written?.unit ?? ''];
  if (written?.amount === undefined || scale === undefined) return undefined;
  const spread = plainNumber(written.amount)?.mul(scale);
  if (spread?.ge(THINNEST) && spread.le(THICKEST)) return spread;
  const [least, most] = [THINNEST, THICKEST].map((limit) => Number(limit.div(scale).toNumber().toPrecision(2)));
  settings.report(
    settingWrong({
      source: settings.places.of(written),
      message: say`${settings.what} is spread at ${String(least)} to ${String(most)} ${written.unit}, and ${written.amount} is not`,
      cure: say`Write what one glue line takes, both faces together, as in spread 150 g/m2.`,
    }),
  );
  return undefined;
}
