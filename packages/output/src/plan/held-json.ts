import { historiesOf, holdingOf, type Operation, type Plan, type SetUp } from '@dryfit/engine';
import type { Item } from '../batch.js';
import { cabinetId } from '../fit-json/fit-json.js';
import { exact, known } from '../fit-json/lengths.js';
import type { HeldJson, HistoryJson } from './held-schema.js';

/** How the pieces of an operation are held, as plan.json tells it. */
export function heldJson(operation: Operation, setUp: SetUp, items: readonly Item[]): HeldJson {
  const shop = items[0]?.result.spec.shop ?? {};
  const { by, along, across, flat, packers, machine, people } = holdingOf(operation, setUp, shop);
  return known<HeldJson>({
    by,
    along: { ...along },
    across: { ...across },
    flat: flat && known({ because: flat.because, cup: flat.because === 'cup' ? exact(flat.most) : undefined }),
    packers: packers.map(({ thickness, where, pieces }) => ({ thickness: exact(thickness), where, pieces })),
    machine,
    people,
  });
}

/** What becomes of every piece in the course of the plan, as plan.json tells it. */
export function historiesJson({ setUps }: Pick<Plan, 'setUps'>, items: readonly Item[]): HistoryJson[] {
  return historiesOf(setUps).map(({ pieces, steps }) => ({
    pieces: pieces.map(({ item, parts }) => {
      const made = items[item];
      return { cabinet: made ? cabinetId(made.result) : '', parts: [...parts] };
    }),
    steps: steps.map(({ setUp, operation, turns, fenceChanges }) => ({
      setUp: setUp + 1,
      operation: setUps[setUp]?.operations.indexOf(operation) ?? 0,
      turns: turns.map((turn) => ({ ...turn })),
      fenceChanges,
    })),
  }));
}
