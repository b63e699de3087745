// The load benchmark's driver at a handful of rooms: it plays whole exchanges and would notice a lost one.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Exchanges } from '../bench/rooms/exchanges.ts';
import type { Losses } from '../bench/rooms/own-seat.ts';
import { type OwnTable, openOwnTable } from '../bench/rooms/own-table.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'load' });
});
afterAll(() => server.stop());

async function rooms(count: number) {
  const losses: Losses = { lost: 0, doubled: 0 };
  const tables: OwnTable[] = [];
  const exchanges = new Exchanges();
  for (let room = 0; room < count; room++) {
    await exchanges.add([server.url], async (urls, events) => {
      const table = await openOwnTable(urls, events, losses);
      tables.push(table);
      return table.driven;
    });
  }
  for (const table of tables) table.begin();
  return { losses, tables, exchanges };
}

test('DL1 ID1 a few rooms go from round to round; nothing acknowledged is lost or done twice', async () => {
  const { losses, tables, exchanges } = await rooms(4);
  for (let step = 1; step <= 10; step++) {
    exchanges.once();
    await expect.poll(() => exchanges.times.length, { timeout: 20_000 }).toBe(4 * step);
  }
  expect(losses).toEqual({ lost: 0, doubled: 0 });
  for (const { seats } of tables) for (const { unanswered } of seats) expect(unanswered).toBe(0);
});

test('connections cut while answers are on their way come back, and the exchange ends as if they had stayed', async () => {
  const { losses, tables, exchanges } = await rooms(3);
  exchanges.once();
  await Promise.all(tables.map((table) => table.drop()));
  await Promise.all(tables.map((table) => table.comeBack()));
  expect(await exchanges.settled(20_000)).toBe(0);
  expect(exchanges.times).toHaveLength(3);
  expect(losses).toEqual({ lost: 0, doubled: 0 });
});
