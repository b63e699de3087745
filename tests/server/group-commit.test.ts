// Which writes share a transaction: those of busy turns together, within bounds, and no neighbour of a bad one is lost.
import { setImmediate as turn } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { GroupCommit } from '../../server/store/group-commit.ts';

function counting() {
  const groups: number[][] = [];
  let running: number[] = [];
  const commit = new GroupCommit(
    (work) => {
      running = [];
      work();
      groups.push(running);
    },
    () => false,
  );
  const write = (n: number) => commit.run(() => running.push(n));
  return { commit, groups, write };
}

test('a lone write is kept at the next turn', async () => {
  const { groups, write } = counting();
  void write(1);
  await turn();
  expect(groups).toEqual([[1]]);
});

test('what busy turns bring is kept together, but nothing waits for more than nine of them', async () => {
  const { groups, write } = counting();
  void write(0);
  for (let n = 1; n < 30; n++) {
    void write(n);
    await turn();
  }
  await turn();
  expect(groups.flat()).toEqual(Array.from({ length: 30 }, (_, n) => n));
  // Two in the first turn, and one in each of the eight after it.
  expect(groups[0]).toHaveLength(10);
});

test('one that fails takes nobody with it, and what waits at the close is kept', async () => {
  const { commit, groups, write } = counting();
  const [before, bad, after] = [
    write(1),
    commit.run(() => {
      throw new Error('bad');
    }),
    write(2),
  ];
  commit.flush();
  await expect(bad).rejects.toThrow('bad');
  await Promise.all([before, after]);
  expect(groups.flat()).toEqual([1, 2]);
});
