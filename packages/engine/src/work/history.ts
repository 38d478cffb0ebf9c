import type { PartId } from '../spec/spec.js';
import type { Operation } from './operation.js';
import type { SetUp } from './plan.js';
import { type PieceTurn, poseOf, turnsBetween } from './pose.js';

/** What is done to a piece in one set-up, and how it is turned for it. */
export interface HistoryStep {
  /** Index of the set-up in the plan. */
  readonly setUp: number;
  readonly operation: Operation;
  /** From how it lay before, in the operator's view; nothing for the first step and where it lies as before. */
  readonly turns: readonly PieceTurn[];
  /** Its datum goes to the other fence than before. */
  readonly fenceChanges: boolean;
}

/** Pieces that go through the same set-ups in the same way, and what happens to them, in turn. */
export interface PieceHistory {
  /** By index of the item in the job. */
  readonly pieces: readonly { readonly item: number; readonly parts: readonly PartId[] }[];
  readonly steps: readonly HistoryStep[];
}

/**
 * What becomes of every piece in the course of a plan, set-up by set-up in the order of their sheets.
 */
export function historiesOf(setUps: readonly SetUp[]): readonly PieceHistory[] {
  const byPiece = new Map<string, { readonly item: number; readonly part: PartId; readonly done: Done[] }>();
  setUps.forEach((own, setUp) => {
    for (const operation of inTurn(own))
      for (const { item, parts } of operation.pieces)
        for (const part of parts) {
          const piece = byPiece.get(`${item} ${part}`) ?? { item, part, done: [] };
          piece.done.push({ setUp, operation });
          byPiece.set(`${item} ${part}`, piece);
        }
  });
  const found = new Map<string, { readonly done: readonly Done[]; readonly parts: Map<number, PartId[]> }>();
  for (const { item, part, done } of byPiece.values()) {
    const key = done.map(({ setUp, operation }) => `${setUp}/${operation.number}`).join(' ');
    const alike = found.get(key) ?? { done, parts: new Map<number, PartId[]>() };
    alike.parts.set(item, [...(alike.parts.get(item) ?? []), part]);
    found.set(key, alike);
  }
  return [...found.values()].map(({ done, parts }) => ({
    pieces: [...parts].map(([item, own]) => ({ item, parts: own })),
    steps: done.map((step, i) => stepOf(setUps, step, done[i - 1])),
  }));
}

interface Done {
  readonly setUp: number;
  readonly operation: Operation;
}

/** Whether something in a set-up waits for other work of the same set-up. */
export const waitsWithin = ({ operations, waits }: Pick<SetUp, 'operations' | 'waits'>): boolean =>
  waits.some(({ first }) => first.some((operation) => operations.includes(operation)));

/** The operations of a set-up as they are done: what goes to the left fence first, unless some of it waits for the rest. */
export const inTurn = (setUp: Pick<SetUp, 'operations' | 'waits'>): readonly Operation[] =>
  waitsWithin(setUp)
    ? setUp.operations
    : (['left', 'right'] as const).flatMap((hand) => setUp.operations.filter(({ half }) => half.hand === hand));

function stepOf(setUps: readonly SetUp[], step: Done, before: Done | undefined): HistoryStep {
  const lies = ({ setUp, operation: { half, part } }: Done) => {
    const own = setUps[setUp];
    return own && poseOf(half, own.setting, part);
  };
  const [from, to] = [before && lies(before), lies(step)];
  return {
    ...step,
    turns: from && to ? turnsBetween(from, to) : [],
    fenceChanges: before !== undefined && before.operation.half.hand !== step.operation.half.hand,
  };
}
