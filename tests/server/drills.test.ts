// Drills prepared beside the tables: by a worker, by nobody when it cannot, and no further than a few problems.
import { expect, onTestFinished, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import { CompiledCards } from '../../server/workers/compiled-cards.ts';
import { pooledDrills } from '../../server/workers/drills.ts';
import { prepareDrill } from '../../server/workers/prepare-drill.ts';
import { HOUSE_CARD_REF } from '../../server/workers/task.ts';
import { WorkerPool } from '../../server/workers/worker-pool.ts';
import { CLASSES_PATH } from '../../shared-engine/protocol/paths.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { TERMS } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { fakeWorkers, nextTurn } from '../kit/fake-workers.ts';
import { post } from '../kit/http-client.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const card = playingCard({ kind: 'house' });
const seed = seedNamed('drills');
const DRILL = drillOf([dealOf({ kind: 'random', seed }, { seat: 2, dealer: 3 })]);

test('a deal is rotated until the seat it was made for is seat 0', () => {
  const prepared = prepareDrill(DRILL, houseKernel);
  if (!prepared.ok) throw new Error('the drill was rejected');
  const { racks } = dealTiles({ seed, dealer: 3 });
  expect(prepared.drill).toEqual(DRILL);
  expect(prepared.deals[0]!.dealer).toBe(1);
  expect(prepared.deals[0]!.prepared).toEqual([2, 3, 0, 1].map((seat) => facesOf(racks[seat]!)));
});

test('of many constraints too rare to meet only a few are tried, and those are told', () => {
  const constraint = { inARow: 9, pungs: { from: 1 }, flowers: 0, jokers: 0 } as const;
  const rare = Array.from({ length: 5 }, (_, nth) =>
    dealOf({ kind: 'sampled', constraint, seed }, { id: `rare-${nth}` }),
  );
  const prepared = prepareDrill(drillOf(rare), houseKernel);
  if (prepared.ok) throw new Error('a rack was found');
  expect(prepared.problems.map(({ code, deal }) => [code, deal])).toEqual([
    ['too-rare', 'rare-0'],
    ['too-rare', 'rare-1'],
    ['too-rare', 'rare-2'],
  ]);
});

test('a worker gets the drill as it was sent and the name of the card; a drill that is lost twice has no answer', async () => {
  const fake = fakeWorkers();
  const log = createLog('silent');
  const { newWorker } = fake;
  const pool = new WorkerPool({ clock: new FakeClock(), log, newWorker, maxWorkers: 1, maxQueue: 10 });
  const drills = pooledDrills(pool, new CompiledCards(pool));
  const [good, lost] = [drills.prepare(DRILL, card), drills.prepare('none', card)];
  await nextTurn();
  expect(fake.taken.map(({ task }) => task)).toEqual([{ kind: 'drill', card: HOUSE_CARD_REF, drill: DRILL }]);
  const prepared = prepareDrill(DRILL, houseKernel);
  fake.taken[0]!.done({ kind: 'drill', prepared });
  expect(await good).toEqual(prepared);
  for (let tries = 0; tries < 2; tries++) {
    await nextTurn();
    fake.taken[0]!.die();
  }
  expect(await lost).toBeNull();
});

test('a class whose drill could not be prepared is rejected for now, and nothing is opened', async () => {
  const at = await startServer({ seed: 'drills', drills: { prepare: async () => null } });
  onTestFinished(() => at.stop());
  const response = await post(`${at.url}${CLASSES_PATH}`, { drill: DRILL, terms: TERMS, card: null });
  expect([response.status, (await response.json()).code]).toEqual([503, 'busy']);
  expect(await at.store.count()).toBe(0);
});
