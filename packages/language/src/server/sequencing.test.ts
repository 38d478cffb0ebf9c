import { type Sequence, sequenceSetups } from '@dryfit/engine';
import { isOperationCancelled } from 'langium';
import { expect, test } from 'vitest';
import { CancellationToken, CancellationTokenSource } from 'vscode-languageserver-protocol';
import { Sequencing, type Thread } from './sequencing.js';

/** Costs between so many set-ups that a thread is asked. */
const matrix = (of: number, size = 15) =>
  Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_unused, j) => (i === j ? 0 : ((i * 7 + j * of) % 11) + 1)),
  );

/** A thread that answers when it is told to. */
function held() {
  const asked: (readonly (readonly number[])[])[] = [];
  let ended = 0;
  let answering: ((sequence: Sequence) => void) | undefined;
  let failing: ((error: Error) => void) | undefined;
  const thread: Thread = {
    ask: (cost) => {
      asked.push(cost);
      return new Promise((give, fail) => {
        answering = give;
        failing = fail;
      });
    },
    end: () => {
      ended++;
      failing?.(new Error('ended'));
    },
  };
  return {
    thread,
    asked,
    ended: () => ended,
    answer: async (cost: readonly (readonly number[])[]) => answering?.(await sequenceSetups(cost, { cyclic: true })),
    fail: () => failing?.(new Error('out of memory')),
  };
}

const never = CancellationToken.None;

test('an order that is known is not asked for again; few set-ups are in order without a thread', async () => {
  const one = held();
  const sequencing = new Sequencing(() => one.thread);
  const first = sequencing.for(never, 1000);
  const cost = matrix(3);
  const found = first.sequence(cost, { cyclic: true });
  await expect.poll(() => one.asked.length).toBe(1);
  await one.answer(cost);
  expect(await found).toEqual(await sequenceSetups(cost, { cyclic: true }));
  first.end();
  const second = sequencing.for(never, 1000);
  expect(await second.sequence(cost, { cyclic: true })).toEqual(await found);
  const few = matrix(5, 6);
  expect(await second.sequence(few)).toEqual(await sequenceSetups(few));
  second.end();
  expect([one.asked.length, one.ended()]).toEqual([1, 0]);
});

test('a plan that is dropped ends its thread at once, and another plan has a thread of its own', async () => {
  const threads = [held(), held()];
  let started = 0;
  const sequencing = new Sequencing(() => threads[started++]?.thread as Thread);
  const stop = new CancellationTokenSource();
  const dropped = sequencing.for(stop.token, 1000).sequence(matrix(3), { cyclic: true });
  await expect.poll(() => threads[0]?.asked.length).toBe(1);
  const other = sequencing.for(never, 1000);
  const wanted = other.sequence(matrix(4), { cyclic: true });
  await expect.poll(() => threads.map(({ asked }) => asked.length)).toEqual([1, 1]);
  stop.cancel();
  await expect(dropped).rejects.toSatisfy(isOperationCancelled);
  expect(threads.map(({ ended }) => ended())).toEqual([1, 0]);
  await threads[1]?.answer(matrix(4));
  expect((await wanted).proven).toBe(true);
});

test.each([
  ['that cannot be started', undefined],
  ['that ends by itself', held()],
])('where there is a thread %s, an order with a plain bound is found all the same', async (_, one) => {
  let started = 0;
  const sequencing = new Sequencing(() => {
    started++;
    if (!one) throw new Error('not allowed here');
    return one.thread;
  });
  const cost = matrix(3, 40);
  const plan = sequencing.for(never, 1000);
  const found = plan.sequence(cost, { cyclic: true });
  await expect.poll(() => started).toBe(1);
  if (one) await expect.poll(() => one.asked.length).toBe(1);
  one?.fail();
  const { order, cost: least, lowerBound } = await found;
  expect([...order].sort((a, b) => a - b)).toEqual(cost.map((_row, i) => i));
  expect(lowerBound).toBeGreaterThan(0);
  expect(lowerBound).toBeLessThanOrEqual(least);
  await plan.sequence(matrix(2, 14), { cyclic: true });
  expect(started).toBe(1);
});

test('when the time of a plan is up the solver is left out', async () => {
  const one = held();
  const given: object[] = [];
  const sequencing = new Sequencing(() => ({
    ...one.thread,
    ask: (cost, options) => {
      given.push(options);
      return sequenceSetups(cost, options);
    },
  }));
  const plan = sequencing.for(never, 0);
  await plan.sequence(matrix(3), { cyclic: true, timeLimitMs: 500 });
  const other = sequencing.for(never, 100);
  await other.sequence(matrix(4), { cyclic: true, timeLimitMs: 500 });
  expect(given).toEqual([
    { cyclic: true, timeLimitMs: 500, withoutSolver: true },
    { cyclic: true, timeLimitMs: 100 },
  ]);
});
