import { type Finding, type Limits, type Pose, Rational, say } from '@dryfit/engine';
import type { Limits as LimitsNode, Pose as PoseNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { plainNumber } from '../figure.js';
import { Settings } from '../settings.js';

/** How a piece is held where the shop says nothing: an edge's reference face down, a face's reference end up. */
export const DEFAULT_POSE: Pose = { edge: 'down', face: 'up' };

/**
 * What is asked for where the shop says nothing, mm; `sag` in parts of the span. No standard gives these; they are the
 * language's own, but for `sag`: span / 144 is what the Architectural Woodwork Standards, edition 1 (2009), section 10,
 * let pass.
 */
export const DEFAULT_LIMITS: Limits = {
  slotToEdge: Rational.of(10),
  wall: Rational.of(4),
  skin: Rational.of(3),
  step: Rational.of(3, 10),
  alike: Rational.of(3),
  sag: Rational.of(1, 144),
  gap: Rational.of(1, 2),
  movement: Rational.of(1),
  written: [],
};

export function readPose(node: PoseNode, unit: Unit, report: (finding: Finding) => void): Pose {
  const settings = new Settings(node, 'the pose', unit, report);
  const edge = settings.one(node.edge, 'edge slots reference', 'edge');
  const face = settings.one(node.face, 'face slots reference', 'face');
  return {
    edge: way(edge) ?? DEFAULT_POSE.edge,
    face: way(face) ?? DEFAULT_POSE.face,
    either: [...(isEither(edge) ? (['edge'] as const) : []), ...(isEither(face) ? (['face'] as const) : [])],
    source: settings.places.of(node),
  };
}

const way = (word: string | undefined): 'down' | 'up' | undefined =>
  word?.startsWith('down') ? 'down' : word?.startsWith('up') ? 'up' : undefined;

/** `down or up`, its words run together. */
const isEither = (word: string | undefined): boolean => word?.includes('or') ?? false;

const WORDS = {
  slotToEdge: 'slot to edge along the run',
  wall: 'wall beside slot',
  skin: 'skin under slot',
  step: 'step',
  alike: 'alike',
  sagAtMost: 'sag at most',
  gap: 'gap',
  movement: 'movement',
} as const;

/** Limits in parts of a span. */
const PARTS_OF_SPAN = { sag: 'sag', sagInTime: 'sag in time' } as const;

/** Limits in minutes. */
const MINUTES = { glueOpen: 'glue open', jointTime: 'joint closed in' } as const;

export function readLimits(node: LimitsNode, unit: Unit, report: (finding: Finding) => void): Limits {
  const settings = new Settings(node, 'the limits', unit, report);
  const limits: { -readonly [K in keyof Limits]: Limits[K] } = { ...DEFAULT_LIMITS, source: settings.places.of(node) };
  const written: string[] = [];
  for (const key of Object.keys(WORDS) as (keyof typeof WORDS)[]) {
    const value = settings.optionalLength(node[key], WORDS[key], key, 'zero');
    if (value === undefined) continue;
    limits[key] = value;
    written.push(key);
  }
  for (const key of Object.keys(PARTS_OF_SPAN) as (keyof typeof PARTS_OF_SPAN)[]) {
    const words = PARTS_OF_SPAN[key];
    const text = settings.one(node[key], words, key);
    if (text === undefined) continue;
    const value = plainNumber(text);
    if (value && value.sign() > 0 && value.lt(Rational.ONE)) {
      limits[key] = value;
      written.push(key);
    } else {
      settings.wrong(
        node,
        say`${words} is a part of the span above 0 and below 1, and ${text} is none`,
        say`Write it as a fraction, as in ${words} 1/144 of span.`,
      );
    }
  }
  for (const key of Object.keys(MINUTES) as (keyof typeof MINUTES)[]) {
    const words = MINUTES[key];
    const text = settings.one(node[key], words, key);
    if (text === undefined) continue;
    const value = plainNumber(text);
    if (value && value.sign() > 0) {
      limits[key] = value;
      written.push(key);
    } else {
      settings.wrong(
        node,
        say`${words} is a time above 0, and ${text} is none`,
        say`Write it in minutes, as in ${words} 10 min.`,
      );
    }
  }
  return { ...limits, written };
}
