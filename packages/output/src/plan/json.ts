import type { Operation, Plan, Setting, SetUp } from '@dryfit/engine';
import type { Item } from '../batch.js';
import { cabinetId } from '../fit-json/fit-json.js';
import { exact, known, maybe } from '../fit-json/lengths.js';
import { printText } from '../print/length.js';
import { alikeJson } from './alike.js';
import { firstPieceJson } from './first-piece-json.js';
import { heldJson, historiesJson } from './held-json.js';
import { waitsJson } from './order.js';
import type { PlanJson } from './schema.js';
import { countsJson, fenceJson, spacersOf } from './spacers.js';
import type { PlannedJob } from './tables.js';

type SetUpJson = PlanJson['setUps'][number];
type OperationJson = SetUpJson['operations'][number];

/** What plan.json holds, as the published schema (version 1) describes it. */
export function planJson({ title, items, plan, errors }: PlannedJob): PlanJson {
  const { naive, grouped } = plan;
  return {
    format: 'dryfit-plan',
    version: 1,
    title: printText(title, { units: 'mm' }),
    errors,
    changeMinutes: plan.change.toNumber(),
    atLeastMinutes: plan.atLeast.toNumber(),
    proven: plan.proven,
    ranOut: plan.ranOut,
    millMinutes: plan.mill.toNumber(),
    cabinetByCabinet: { setUps: naive.setUps, changeMinutes: naive.change.toNumber() },
    likeTogether: { setUps: grouped.setUps, changeMinutes: grouped.change.toNumber() },
    spacers: countsJson(spacersOf(plan.setUps)),
    setUps: plan.setUps.map((setUp, i) => setUpJson(setUp, i, plan, items)),
    histories: historiesJson(plan, items),
  };
}

/** plan.json as text: two spaces a level, a line end at the end. */
export const planJsonText = (plan: PlanJson): string => `${JSON.stringify(plan, undefined, 2)}\n`;

function setUpJson(setUp: SetUp, index: number, plan: Plan, items: readonly Item[]): SetUpJson {
  const { setting, operations } = setUp;
  return known<SetUpJson>({
    number: index + 1,
    machine: setting.machine,
    connector: setting.connector,
    depth: exact(setting.depth),
    base: exact(setting.base),
    surface: setting.pose.surface,
    pattern: setting.pattern,
    lines: setting.lines.map(exact),
    spacer: spacerJson(setting),
    spacers: fenceJson(setUp),
    stop: maybe(setting.stop),
    changes: [...setUp.changed],
    changeMinutes: setUp.change.toNumber(),
    millMinutes: setUp.mill.toNumber(),
    loads: setUp.loads,
    slots: setUp.slots,
    operations: operations.map((operation) => operationJson(operation, setUp, items)),
    waits: waitsJson(setUp, plan),
    again: setUp.again === undefined ? undefined : setUp.again + 1,
    firstPiece: firstPieceJson(setUp, items),
    beside: setUp.beside.map(({ left, right, times }) => ({
      left: operations.indexOf(left),
      right: operations.indexOf(right),
      times,
    })),
    alike: alikeJson(setUp),
  });
}

function spacerJson({ spacer }: Setting): SetUpJson['spacer'] {
  const width = spacer.kind === 'cut' ? exact(spacer.width) : undefined;
  return known<SetUpJson['spacer']>({
    kind: spacer.kind,
    stack: spacer.kind === 'stock' ? spacer.stack.map(exact) : [],
    width,
  });
}

function operationJson(operation: Operation, setUp: SetUp, items: readonly Item[]): OperationJson {
  const { pose } = setUp.setting;
  const { half, joint, pieces, weight } = operation;
  return known<OperationJson>({
    pieces: pieces.map(({ item, parts, count }) => {
      const made = items[item];
      return { cabinet: made ? cabinetId(made.result) : '', parts: [...parts], count };
    }),
    count: operation.count,
    joint: joint.id,
    surface: half.surface,
    reference: { kind: half.from.kind, side: half.from.side, looks: pose.reference },
    datum: half.datum,
    fence: half.hand,
    lines: half.slots.map(({ fromZero }) => exact(fromZero)),
    stop:
      half.stop &&
      known<NonNullable<OperationJson['stop']>>({
        end: half.stop.end,
        distance: exact(half.stop.at),
        block: half.stop.block && exact(half.stop.block.width),
      }),
    weight: weight?.toNumber(),
    held: heldJson(operation, setUp, items),
    needs: { before: [...operation.needs.before], after: [...operation.needs.after] },
    otherwise: operation.otherwise && { ...operation.otherwise, adds: operation.otherwise.adds.toNumber() },
  });
}
