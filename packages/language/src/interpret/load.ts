import { type LoadStatement, type MoistureStatement, Rational, say } from '@dryfit/engine';
import { settingWrong } from '../checks/setting-wrong.js';
import type { LoadLine, MoistureLine } from '../generated/ast.js';
import { FOOT, POUND, plainNumber } from './figure.js';
import type { StatementReading } from './reading.js';
import { readSilences } from './silences.js';
import { wordsOfRefs } from './words.js';

type Mass = LoadStatement['mass'];

/** The units a load may be written in, each as kg, kg/m or kg/m². */
const UNITS: Readonly<Record<string, { readonly kilograms: Rational; readonly per: Mass['per'] }>> = {
  kg: { kilograms: Rational.ONE, per: 'part' },
  lb: { kilograms: POUND, per: 'part' },
  'kg/m': { kilograms: Rational.ONE, per: 'metre' },
  'lb/ft': { kilograms: POUND.div(FOOT), per: 'metre' },
  'kg/m2': { kilograms: Rational.ONE, per: 'square metre' },
  'lb/ft2': { kilograms: POUND.div(FOOT.mul(FOOT)), per: 'square metre' },
};

export const idOfLoad = (node: LoadLine): string =>
  `load ${node.middle ? 'at the middle of' : 'on'} ${wordsOfRefs(node.parts)}`;

/** What each of the named parts carries. */
export function readLoad(node: LoadLine, reading: StatementReading): LoadStatement | undefined {
  const parts = reading.parts.each(node.parts);
  const silences = readSilences(node.silences, reading);
  const unit = UNITS[node.unit ?? ''];
  if (node.amount === undefined || unit === undefined) return undefined;
  const amount = plainNumber(node.amount);
  const source = reading.places.of(node);
  if (amount === undefined || amount.sign() <= 0) {
    reading.report(
      settingWrong({
        source: reading.places.property(node, 'amount'),
        message: say`a load is a figure in ${node.unit} above 0, and ${node.amount} is none`,
        cure: say`Write it as a plain number, as in load 25 ${node.unit}.`,
      }),
    );
    return undefined;
  }
  if (node.middle && unit.per !== 'part') {
    reading.report(
      settingWrong({
        source: reading.places.property(node, 'unit'),
        message: say`a load in ${node.unit} is spread and cannot lie at the middle`,
        cure: say`Write what lies at the middle in kg or lb, or write on in place of at the middle of.`,
      }),
    );
    return undefined;
  }
  if (parts.length === 0) return undefined;
  return {
    kind: 'load',
    id: reading.statement,
    source,
    silences,
    parts,
    mass: { amount: amount.mul(unit.kilograms), per: unit.per },
    text: `${node.amount} ${node.unit}`,
    lies: node.middle ? 'middle' : 'spread',
    ends: node.fixed ? 'fixed' : 'resting',
  };
}

export const idOfMoisture = (): string => 'moisture';

/** Between what the moisture of the wood will swing, and what it has as it is worked. */
export function readMoisture(node: MoistureLine, reading: StatementReading): MoistureStatement | undefined {
  const silences = readSilences(node.silences, reading);
  const read = (property: 'least' | 'most' | 'made'): Rational | undefined => {
    const text = node[property];
    if (text === undefined) return undefined;
    const value = plainNumber(text);
    if (value?.le(Rational.of(100))) return value;
    reading.report(
      settingWrong({
        source: reading.places.property(node, property),
        message: say`moisture is a figure in percent from 0 to 100, and ${text} is none`,
        cure: say`Write it as a plain number, as in moisture 6 to 11 % made at 8 %.`,
      }),
    );
    return undefined;
  };
  const [least, most, made] = [read('least'), read('most'), read('made')];
  if (!least || !most || !made) return undefined;
  if (least.gt(most)) {
    reading.report(
      settingWrong({
        source: { ...reading.places.property(node, 'least'), end: reading.places.property(node, 'most').end },
        message: say`moisture ${node.least} to ${node.most} runs backwards`,
        cure: say`Write the least first, then the most.`,
      }),
    );
    return undefined;
  }
  return { kind: 'moisture', id: reading.statement, source: reading.places.of(node), silences, least, most, made };
}
