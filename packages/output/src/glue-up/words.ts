import type { Clamps, FitResult, GlueStep } from '@dryfit/engine';
import { partNames } from '../print/order.js';

type Way = Clamps['along'];

const WORDS: readonly (readonly [low: string, high: string])[] = [
  ['to the left', 'to the right'],
  ['to the front', 'to the rear'],
  ['down', 'up'],
];

/** A way in words, its lesser parts left out: "to the left", "down and to the rear". Up and down come first. */
export function wayWords(way: Way): string {
  const largest = Math.max(...way.map(Math.abs));
  return [2, 0, 1]
    .flatMap((i) => {
      const k = way[i] as number;
      if (Math.abs(k) <= largest / 100) return [];
      return WORDS[i]?.[k > 0 ? 1 : 0] ?? [];
    })
    .join(' and ');
}

const PULLS: readonly string[] = ['from left to right', 'from front to rear', 'from top to bottom'];

/** How clamps lie: "from left to right", "across the mitre". */
export function clampWords({ along }: Clamps): string {
  const axes = along.flatMap((k, i) => (k === 0 ? [] : [i]));
  return axes.length === 1 ? (PULLS[axes[0] as number] as string) : 'across the mitres, or a strap round them';
}

/** Parts in one line, like parts drawn together. */
export function named({ fit }: FitResult, ids: readonly string[]): string {
  const wanted = new Set(ids);
  const list = partNames(fit.parts.filter(({ id }) => wanted.has(id))).split(', ');
  return list.length < 2 ? list.join('') : `${list.slice(0, -1).join(', ')} and ${list.at(-1)}`;
}

/** What is done in a step, in one sentence without a full stop. */
export function stepWords(result: FitResult, step: GlueStep): string {
  const joints = jointsOf(result, step);
  const parts = named(
    result,
    step.coming.flatMap((one) => one.parts),
  );
  if (step.allMove) {
    const onto = step.onto.length > 0 ? ` to ${named(result, step.onto)}` : '';
    return `Draw ${parts} together${onto}, all at once`;
  }
  const met = new Set(joints.flatMap(({ entering, host }) => [entering, host]));
  const onto = step.onto.filter((id) => met.has(id));
  const way = movesOf(step);
  if (joints.length === 0) return `Lay ${parts} in place, moving ${way}`;
  const slides = joints.every(({ verb, halves }) => verb === 'groove' && halves.length === 0);
  return `${slides ? 'Slide' : 'Put'} ${parts} ${slides ? 'into' : 'to'} ${named(result, onto)}, moving ${way}`;
}

/** The way parts come, each way once: "to the left", "to the rear, then up". */
function movesOf({ coming }: GlueStep): string {
  const ways = coming.map(({ legs }) => legs.map(({ way }) => wayWords(way)).join(', then '));
  return [...new Set(ways)].join('; ');
}

export const jointsOf = ({ fit }: FitResult, { joints }: GlueStep) =>
  joints.flatMap((id) => fit.joints.find((joint) => joint.id === id) ?? []);

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
