import { axisOf, dimensionOf } from '@dryfit/engine';
import type { Entry } from '../generated/ast.js';
import { isSide } from './head.js';
import { RANK } from './offer.js';
import { isAt, type Situation } from './situation.js';

/** The first word of each setting, and the property of the entry that keeps it. */
const SETTINGS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  Material: same(
    ...['thickness', 'measured', 'sheet', 'grain', 'stiffness', 'density', 'creep', 'movement', 'layers', 'oversize'],
  ),
  Band: same('thickness', 'oversize', 'rolls', 'spare'),
  Machine: same('cutter', 'bit', 'drill', 'kerf', 'base', 'body'),
  Connector: {
    ...same('along', 'across', 'thickness', 'diameter', 'length', 'slot', 'clearance', 'plunge', 'packs', 'spare'),
    by: 'machine',
  },
  Pattern: { lines: 'layouts', first: 'layouts' },
  Jig: same('bed', 'reach', 'fences', 'stop', 'spacers', 'hold'),
  Pose: same('edge', 'face'),
  Limits: {
    slot: 'slotToEdge',
    ...same('wall', 'skin', 'step', 'alike', 'gap', 'sag', 'movement'),
    glue: 'glueOpen',
    joint: 'jointTime',
  },
  Changes: same(...['machine', 'depth', 'base', 'pose', 'pattern', 'spacer', 'stop', 'load', 'slot']),
  Glue: same('spread', 'packs', 'spare'),
  Tolerances: same(...['saw', 'square', 'mitre', 'cuts', 'fence', 'spacer', 'stop', 'line', 'cup', 'dirt', 'reckon']),
};

function same(...words: readonly string[]): Record<string, string> {
  return Object.fromEntries(words.map((word) => [word, word]));
}

/** A machine has one of these. */
const TOOLS: readonly string[] = ['cutter', 'bit', 'drill'];

/** Settings that a shape of connector does not have. */
const NOT_OF_SHAPE: Readonly<Record<string, readonly string[]>> = {
  biscuit: ['diameter', 'length', 'slot'],
  loosetenon: ['diameter', 'length'],
  dowel: ['along', 'across', 'thickness', 'slot'],
};

/** How far up the first word of a setting stands; undefined where the entry has it already or is of another kind. */
export function settingRank(word: string, rule: string, situation: Situation): number | undefined {
  const settings =
    SETTINGS[rule === 'Layout' ? 'Pattern' : rule === 'Provenance' ? (situation.entry?.$type ?? '') : rule];
  const { entry } = situation;
  if (entry === undefined || settings === undefined || situation.cabinet) return RANK.word;
  if (rule === 'Provenance') return given(entry, 'source') ? undefined : RANK.last;
  if (!Object.hasOwn(settings, word) || continues(situation)) return RANK.word;
  // The one that is being written over may stay.
  if (situation.under !== word && given(entry, settings[word] ?? word)) return undefined;
  if (entry.$type === 'Connector' && NOT_OF_SHAPE[entry.shape ?? '']?.includes(word)) return undefined;
  if (entry.$type === 'Machine' && situation.under !== word) {
    const tool = TOOLS.find((other) => given(entry, other));
    if (tool !== undefined && TOOLS.includes(word)) return undefined;
    if (word === 'kerf' && (tool === 'bit' || tool === 'drill')) return undefined;
  }
  return RANK.fits;
}

/** True inside a setting of several words: `wall beside …`. */
const continues = ({ tail }: Situation): boolean => /(^| )(beside|under)$/.test(tail);

function given(entry: Entry, property: string): boolean {
  const written: unknown = (entry as unknown as Readonly<Record<string, unknown>>)[property];
  return Array.isArray(written) && written.length > 0;
}

/** True for a size that a notch or cant still needs: one across each of its two sides. */
export function legFits(word: string, { notch, offset, opened }: Situation): boolean {
  const written = notch?.legs.filter((leg) => !isAt(leg, offset)).map(({ dimension }) => dimension as string) ?? [];
  const across = opened.filter(isSide).map((side): string => dimensionOf(axisOf(side)));
  return !written.includes(word) && across.slice(-2).includes(word);
}
