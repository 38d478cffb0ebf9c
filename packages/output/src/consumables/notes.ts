import type { Consumables, GlueNeed, Need, Rational, Text } from '@dryfit/engine';
import { percent } from './lines.js';

/** What the figures of a job's consumables rest on, and what they leave out. */
export function consumableNotes(consumables: Consumables): readonly Text[] {
  const { bands, connectors, glue } = consumables;
  const needs = named(consumables);
  if (needs.length === 0) return [];
  const own = needs.filter(({ need }) => !need.share.written);
  const [first] = own;
  const unsold = needs.filter(({ need }) => need.buy === undefined);
  const unproven = needs.filter(({ need }) => need.buy?.proven === false);
  return [
    ...(first
      ? [
          [
            `Spare of ${names(own)}: ${percent(first.need.share.of)} %, the language's own figure (common practice, no source); a shop writes its own, as in spare 5 %.`,
          ],
        ]
      : []),
    ...(needs.length > unsold.length
      ? [['What is bought leaves as little over as packs can, and takes the fewest that do.']]
      : []),
    ...(unproven.length > 0 ? [[`Of ${names(unproven)} there may be a choice that leaves less over.`]] : []),
    ...(unsold.length > 0 ? [[`The shop does not say what ${names(unsold)} ${verb(unsold)} sold in.`]] : []),
    ...(bands.length > 0
      ? [['Bands: each edge whole, with what is trimmed off where the band says its oversize.']]
      : []),
    ...(glue ? glueNotes(glue) : []),
    ...(connectors.length + bands.length > 0
      ? [['What is in stock already is to be taken off. Sheets are not counted.']]
      : []),
  ];
}

interface Named {
  readonly name: string;
  readonly need: Need;
}

const named = ({ bands, connectors, glue }: Consumables): readonly Named[] => [
  ...connectors.map((need) => ({ name: need.connector.name, need })),
  ...bands.map((need) => ({ name: need.band.name, need })),
  ...(glue ? [{ name: glue.glue?.name ?? 'glue', need: glue }] : []),
];

const names = (list: readonly Named[]): string => list.map(({ name }) => name).join(', ');
const verb = (list: readonly Named[]): string => (list.length === 1 ? 'is' : 'are');

function glueNotes({ areas, glue, spread }: GlueNeed): readonly Text[] {
  const { connectors, faces, layers } = areas;
  const kinds: readonly (readonly [string, Rational])[] = [
    ['where parts touch', faces],
    ['round connectors', connectors],
    ['between layers', layers],
  ];
  const lines = kinds.filter(([, area]) => area.sign() > 0).map(([words, area]) => `${squareMetres(area)} ${words}`);
  const whose = glue ? "the shop's figure" : "the language's own figure (common practice, no source)";
  return [
    [
      `Glue lines: ${lines.join(', ')}, at ${Number(spread.toNumber().toFixed(1))} g/m2, ${whose}. Amounts are rounded up.`,
    ],
    [
      'Not in the glue: panels in grooves, parts that rest, joints that are said to be held otherwise (a groove that says connect none "glued" is in it), and bands, which take their own.',
    ],
  ];
}

/** mm² as m², to a thousandth, upward. */
const squareMetres = (area: Rational): string => `${Math.ceil(area.toNumber() / 1000) / 1000} m2`;
