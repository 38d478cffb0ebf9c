import type { Side } from '../spec/sides.js';
import type { Connect, Fact, JointStatement, Silence, Toward } from '../spec/spec.js';
import type { Layout } from '../spec/stock.js';
import type { Length, Places } from './written.js';

/** A joint statement while its braces are being filled. */
export type Draft = { -readonly [K in keyof JointStatement]: JointStatement[K] };

/** One line within a joint's braces. */
export type Item = (draft: Draft, places: Places) => void;

/** A placing fact, for a joint's braces or for a placing of its own. */
export type FactMaker = (places: Places) => Fact;

/** Puts a placing fact into a joint's braces. */
export const fact =
  (make: FactMaker): Item =>
  (draft, places) => {
    draft.facts = [...draft.facts, make(places)];
  };

export const flush = (...sides: readonly Side[]): Item =>
  fact((places) => ({ kind: 'flush', sides, source: places.source() }));
export const flushWith =
  (side: Side, plane: string): FactMaker =>
  (places) => ({
    kind: 'flush with',
    side,
    plane: places.plane(plane, side),
    source: places.source(),
  });
export const setBack =
  (side: Side, by: Length, plane: string): FactMaker =>
  (places) => ({
    kind: 'set back',
    side,
    by: places.length(by),
    plane: places.plane(plane, side),
    source: places.source(),
  });
export const proud =
  (side: Side, by: Length, plane: string): FactMaker =>
  (places) => ({
    kind: 'proud',
    side,
    by: places.length(by),
    plane: places.plane(plane, side),
    source: places.source(),
  });
export const against =
  (side: Side, plane: string): FactMaker =>
  (places) => ({
    kind: 'against',
    side,
    plane: places.plane(plane),
    source: places.source(),
  });
export const at =
  (side: Side, by: Length | readonly Length[], toward: Toward, plane: string): FactMaker =>
  (places) => ({
    kind: 'at',
    side,
    by: (Array.isArray(by) ? (by as readonly Length[]) : [by as Length]).map((length) => places.length(length)),
    toward,
    plane: places.plane(plane),
    source: places.source(),
  });
export const centred =
  (low: string, high: string): FactMaker =>
  (places) => ({ kind: 'centred', low, high, source: places.source() });
export const openings =
  (low: string, high: string, step?: Length): FactMaker =>
  (places) => ({
    kind: 'openings',
    low: places.plane(low),
    high: places.plane(high),
    step: step === undefined ? undefined : places.length(step),
    source: places.source(),
  });

/** `connect biscuit20 by deep5`, or by lines written in place. */
export const by = (connector: string, pattern: string | Layout, places: Places): Connect => ({
  kind: 'by',
  connector,
  pattern,
  source: places.source(),
});
export const connect =
  (connector: string, pattern: string | Layout): Item =>
  (draft, places) => {
    draft.connect = by(connector, pattern, places);
  };
export const connectNone =
  (reason: string): Item =>
  (draft, places) => {
    draft.connect = { kind: 'none', reason, source: places.source() };
  };
export const datum =
  (side: Side, plane?: string): Item =>
  (draft, places) => {
    draft.datum = { side, plane: plane === undefined ? undefined : places.plane(plane, side), source: places.source() };
  };
export const reference =
  (side: Side | 'outer' | 'inner'): Item =>
  (draft, places) => {
    draft.reference = { side, source: places.source() };
  };
export const across =
  (distance: Length | 'centred'): Item =>
  (draft, places) => {
    draft.across =
      distance === 'centred'
        ? { kind: 'centred', source: places.source() }
        : { kind: 'at', distance: places.length(distance), source: places.source() };
  };
export const cut =
  (cuts: { readonly [K in 'depth' | 'width' | 'clearance' | 'lap' | 'stopped']?: Length }): Item =>
  (draft, places) => {
    for (const [name, length] of Object.entries(cuts)) draft[name as keyof typeof cuts] = places.length(length);
  };
export const spacerCut: Item = (draft, places) => {
  draft.spacerCut = { source: places.source() };
};
export const leaveOut =
  (...lines: readonly Length[]): Item =>
  (draft, places) => {
    draft.leaveOut = lines.map((line) => places.length(line));
  };
export const outer =
  (side: Side): Item =>
  (draft, places) => {
    draft.outer = { side, source: places.source() };
  };
export const allow =
  (check: string, reason: string): Item =>
  (draft, places) => {
    const silence: Silence = { check, reason, source: places.source() };
    draft.silences = [...draft.silences, silence];
  };
