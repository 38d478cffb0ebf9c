import { expect, test } from 'vitest';
import { Asking } from './asking.js';

/** Questions that are answered by hand. */
function byHand() {
  const asked: { answer: (value: number) => void; refuse: (error: Error) => void; cancelled: boolean }[] = [];
  const taken: number[] = [];
  const failed: unknown[] = [];
  const asking = new Asking<number>(
    () => {
      let cancel = () => {};
      const answer = new Promise<number>((give, refuse) => {
        const one = { answer: give, refuse, cancelled: false };
        asked.push(one);
        cancel = () => {
          one.cancelled = true;
        };
      });
      return { answer, cancel: () => cancel() };
    },
    (value) => taken.push(value),
    (error) => failed.push(error),
  );
  return { asked, taken, failed, asking };
}

const settled = () => new Promise((done) => setImmediate(done));

test('never asks twice at once, and once more for all that came up meanwhile', async () => {
  const { asked, taken, asking } = byHand();
  asking.look(true);
  for (let i = 0; i < 5; i += 1) asking.want();
  expect(asked).toHaveLength(1);
  asked[0]?.answer(1);
  await settled();
  expect(asked).toHaveLength(2);
  asked[1]?.answer(2);
  await settled();
  expect(asked).toHaveLength(2);
  expect(taken).toEqual([1, 2]);
});

test('what is under way when there is news is cancelled, and asked anew once it has let go', async () => {
  const { asked, taken, failed, asking } = byHand();
  asking.look(true);
  asking.want();
  expect(asked[0]?.cancelled).toBe(false);
  asking.want();
  expect(asked[0]?.cancelled).toBe(true);
  expect(asked).toHaveLength(1);
  asked[0]?.refuse(new Error('cancelled'));
  await settled();
  expect(failed).toHaveLength(1);
  expect(asked).toHaveLength(2);
  expect(asked[1]?.cancelled).toBe(false);
  asked[1]?.answer(2);
  await settled();
  expect(taken).toEqual([2]);
});

test('asks nothing while nobody looks, and catches up when somebody does', async () => {
  const { asked, asking } = byHand();
  asking.want();
  expect(asked).toHaveLength(0);
  asking.look(true);
  expect(asked).toHaveLength(1);
  asked[0]?.answer(1);
  await settled();
  asking.look(false);
  asking.want();
  asking.want();
  expect(asked).toHaveLength(1);
  asking.look(true);
  expect(asked).toHaveLength(2);
});

test('a question that fails is told, and the next is asked all the same', async () => {
  const { asked, taken, failed, asking } = byHand();
  asking.look(true);
  asking.want();
  asked[0]?.refuse(new Error('cancelled'));
  await settled();
  expect(failed).toHaveLength(1);
  asking.want();
  asked[1]?.answer(7);
  await settled();
  expect(taken).toEqual([7]);
});

test('one whom nobody will answer any more is not waited for, and its answer is not taken', async () => {
  const { asked, taken, failed, asking } = byHand();
  asking.look(true);
  asking.want();
  asking.forget();
  asking.want();
  expect(asked).toHaveLength(2);
  asked[0]?.answer(1);
  await settled();
  asked[1]?.answer(2);
  await settled();
  expect(taken).toEqual([2]);
  expect(failed).toEqual([]);
  expect(asked).toHaveLength(2);
});

test('an answer that comes after the end is not taken, and is not waited for', async () => {
  const { asked, taken, asking } = byHand();
  asking.look(true);
  asking.want();
  asking.end();
  expect(asked[0]?.cancelled).toBe(true);
  asked[0]?.answer(1);
  await settled();
  expect(taken).toEqual([]);
});
