// Which appends share a commit: those of busy turns together, within bounds, and none is lost by a bad neighbor.
import { setImmediate as turn } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { Committer } from '../../server/aggregate/committer.ts';
import type { Append, AppendOutcome } from '../../server/ports.ts';
import { row } from '../kit/logs.ts';

function counting(commit?: (batch: readonly Append[]) => Promise<AppendOutcome[]>) {
  const batches: string[][] = [];
  const answers: string[] = [];
  const committer = new Committer({
    async commit(batch) {
      batches.push(batch.map(({ code }) => code));
      return commit ? commit(batch) : batch.map(() => 'committed');
    },
  });
  const append = (code: string) =>
    committer.enqueue({
      plan: () => ({ code, row: row(1), snapshot: null }),
      committed: (outcome) => answers.push(`${code} ${outcome}`),
      failed: () => answers.push(`${code} failed`),
    });
  const turns = async (count: number) => {
    for (let n = 0; n < count; n++) await turn();
  };
  return { committer, batches, answers, append, turns };
}

test('ST6 a lone append is committed at the next turn', async () => {
  const { batches, append } = counting();
  append('A');
  await turn();
  expect(batches).toEqual([['A']]);
});

test('ST6 what busy turns bring is committed together, but nothing waits for more than nine of them', async () => {
  const { batches, append, turns } = counting();
  append('0');
  for (let n = 1; n < 30; n++) {
    append(String(n));
    await turn();
  }
  await turns(12);
  expect(batches.flat()).toEqual(Array.from({ length: 30 }, (_, n) => String(n)));
  // Two in the first turn, and one in each of the eight after it.
  expect(batches[0]).toHaveLength(10);
});

test('ST6 a batch holds sixty-four appends at most, and the others follow in the order they came', async () => {
  const { batches, append, turns } = counting();
  for (let n = 0; n < 150; n++) append(String(n));
  await turns(6);
  expect(batches.map(({ length }) => length)).toEqual([64, 64, 22]);
  expect(batches.flat()).toEqual(Array.from({ length: 150 }, (_, n) => String(n)));
});

test('ST6 each append of a batch gets its own outcome, all of them in one turn', async () => {
  const { answers, append, turns } = counting(async (batch) =>
    batch.map(({ code }) => (code === 'bad' ? 'invalid' : 'committed')),
  );
  for (const code of ['A', 'bad', 'B']) append(code);
  await turns(2);
  expect(answers).toEqual(['A committed', 'bad invalid', 'B committed']);
});

test('ST3 a commit that fails tells every append of it, and the next batch is tried all the same', async () => {
  let isAway = true;
  const { answers, append, turns } = counting(async (batch) => {
    if (isAway) throw new Error('away');
    return batch.map(() => 'committed');
  });
  for (const code of ['A', 'B']) append(code);
  await turns(2);
  isAway = false;
  append('C');
  await turns(2);
  expect(answers).toEqual(['A failed', 'B failed', 'C committed']);
});

test('ST6 who has nothing to store is not in the batch, and a batch of nothing asks no store', async () => {
  const { committer, batches, append, turns } = counting();
  committer.enqueue({ plan: () => null, committed() {}, failed() {} });
  await turns(2);
  expect(batches).toEqual([]);
  append('A');
  await turns(2);
  expect(batches).toEqual([['A']]);
});
