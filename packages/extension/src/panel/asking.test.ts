import { expect, test } from 'vitest';
import { Asking } from './asking.js';

/** Questions that are answered by hand. */
function byHand() {
  const asked: { answer: (value: number) => void; refuse: (error: Error) => void }[] = [];
  const taken: number[] = [];
  const failed: unknown[] = [];
  const asking = new Asking<number>(
    () => new Promise((answer, refuse) => asked.push({ answer, refuse })),
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

test('an answer that comes after the end is not taken', async () => {
  const { asked, taken, asking } = byHand();
  asking.look(true);
  asking.want();
  asking.end();
  asked[0]?.answer(1);
  await settled();
  expect(taken).toEqual([]);
});
