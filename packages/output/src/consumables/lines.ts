import {
  type BandNeed,
  type Connector,
  type ConnectorNeed,
  type Consumables,
  type GlueNeed,
  type Need,
  type Purchase,
  Rational,
  say,
  type Text,
} from '@dryfit/engine';

/** One thing that is used up, in words: bands in metres and glue in grams, or in the feet and ounces that they are sold by. */
export interface ConsumableLine {
  readonly what: 'connector' | 'band' | 'glue';
  readonly name: string;
  /** "biscuit 56 x 23 x 4", "1 thick, 8 pieces"; empty for a glue. */
  readonly size: Text;
  readonly needed: Text;
  /** "8 (5 %)". */
  readonly spare: Text;
  readonly inAll: Text;
  /** "2 packs of 100"; empty where the shop does not say how it is sold. */
  readonly buy: Text;
  readonly over: Text;
}

/** What a job uses up, line by line: the one place that tables, the command line and the cover of a job's sheets have it from. */
export function consumableLines({ bands, connectors, glue }: Consumables): readonly ConsumableLine[] {
  return [...connectors.map(ofConnector), ...bands.map(ofBand), ...(glue ? [ofGlue(glue)] : [])];
}

/** An amount in words, rounded up if at all; what is over is rounded down. */
type Amount = (amount: Rational, over?: boolean) => Text;

function ofConnector(need: ConnectorNeed): ConsumableLine {
  const { connector } = need;
  const size: Text = [`${connector.shape} `, ...connectorSize(connector)];
  return { what: 'connector', name: connector.name, size, ...amounts(need, (n) => [n.toString()], 'pack') };
}

function ofBand(need: BandNeed): ConsumableLine {
  const { band, pieces } = need;
  const size = say`${band.thickness.value} thick, ${pieces === 1 ? '1 piece' : `${pieces} pieces`}`;
  const inFeet = band.packs?.some(({ text }) => text.endsWith('ft')) ?? false;
  const long: Amount = (length, over) => [
    inFeet ? `${whole(length.div(TENTH_FOOT), over, 10)} ft` : `${whole(length, over, 1000)} m`,
  ];
  return { what: 'band', name: band.name, size, ...amounts(need, long, 'roll') };
}

function ofGlue(need: GlueNeed): ConsumableLine {
  const imperial = need.glue?.packs?.some(({ text }) => /oz|lb/.test(text)) ?? false;
  const mass: Amount = (grams, over) => [
    imperial ? `${whole(grams.div(TENTH_OUNCE), over, 10)} oz` : `${whole(grams, over)} g`,
  ];
  return { what: 'glue', name: need.glue?.name ?? 'glue', size: [], ...amounts(need, mass, 'pack') };
}

function amounts({ buy, inAll, needed, share, spare }: Need, amount: Amount, pack: string) {
  return {
    needed: amount(needed),
    spare: [...amount(spare), ` (${percent(share.of)} %)`],
    inAll: amount(inAll),
    buy: buy ? [purchaseWords(buy, pack)] : [],
    over: buy ? amount(buy.over, true) : [],
  };
}

/** "56 x 23 x 4", "8 dia x 30". */
export function connectorSize({ across, along, shape, thickness }: Connector): Text {
  return shape === 'dowel' ? say`${along} dia x ${across}` : say`${along} x ${across} x ${thickness}`;
}

/** "2 packs of 1000, 1 pack of 100". */
function purchaseWords({ packs }: Purchase, word: string): string {
  return packs.map(({ count, pack }) => `${count} ${word}${count === 1 ? '' : 's'} of ${pack.text}`).join(', ');
}

const whole = (amount: Rational, over = false, parts = 1): string =>
  String((over ? amount.floor() : amount.ceil()).toNumber() / parts);

/** A tenth of a foot, mm. */
const TENTH_FOOT = Rational.of(3048, 100);
/** A tenth of an ounce, grams: the sixteenth of a pound of 453.592 37 g. */
const TENTH_OUNCE = Rational.of(45359237, 16_000_000);

export const percent = (share: Rational): string => String(Number((share.toNumber() * 100).toFixed(2)));
