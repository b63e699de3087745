// Drills made ready beside the tables: by the pool, by nobody when the pool cannot, and no further than a few faults.
import { expect, onTestFinished, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/work/cards.ts';
import { pooledDrills } from '../../server/work/drills.ts';
import { Pool } from '../../server/work/pool.ts';
import { prepareDrill } from '../../server/work/prepared-drill.ts';
import { HOUSE_SLIP } from '../../server/work/task.ts';
import { CLASSES_PATH, dealTiles, facesOf } from '../../shared-engine/index.ts';
import { TERMS } from '../kit/class-room.ts';
import { FakeClock } from '../kit/clock.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { post } from '../kit/http-client.ts';
import { scriptedHands, settled } from '../kit/fake-workers.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const card = playingCard({ kind: 'house' });
const seed = seedNamed('drills');
const DRILL = drillOf([dealOf({ kind: 'random', seed }, { seat: 2, dealer: 3 })]);

test('a deal is turned until the seat it was made for is seat 0', () => {
  const prepared = prepareDrill(DRILL, houseKernel);
  if (!prepared.ok) throw new Error('the drill was refused');
  const { racks } = dealTiles({ seed, dealer: 3 });
  expect(prepared.drill).toEqual(DRILL);
  expect(prepared.deals[0]!.dealer).toBe(1);
  expect(prepared.deals[0]!.prepared).toEqual([2, 3, 0, 1].map((seat) => facesOf(racks[seat]!)));
});

test('of many wishes too rare to find a few are sought, and told', () => {
  const wish = { inARow: 9, pungs: { from: 1 }, flowers: 0, jokers: 0 } as const;
  const rare = Array.from({ length: 5 }, (_, nth) =>
    dealOf({ kind: 'described', wish, seed }, { id: `rare-${nth}` }),
  );
  const prepared = prepareDrill(drillOf(rare), houseKernel);
  if (prepared.ok) throw new Error('a rack was found');
  expect(prepared.problems.map(({ code, deal }) => [code, deal])).toEqual([
    ['too-rare', 'rare-0'],
    ['too-rare', 'rare-1'],
    ['too-rare', 'rare-2'],
  ]);
});

test('the pool gets the drill as it was sent and the name of the card; its answer is the answer, a lost one is none', async () => {
  const scripted = scriptedHands();
  const log = createLog('silent');
  const pool = new Pool({ clock: new FakeClock(), log, newHand: scripted.newHand, hands: 1, patience: 1000 });
  const drills = pooledDrills(pool);
  const [good, lost] = [drills.prepare(DRILL, card), drills.prepare('none', card)];
  expect(scripted.taken.map(({ task }) => task)).toEqual([{ kind: 'drill', card: HOUSE_SLIP, drill: DRILL }]);
  const prepared = prepareDrill(DRILL, houseKernel);
  scripted.taken[0]!.done({ kind: 'drill', prepared });
  expect(await good).toEqual(prepared);
  for (let tries = 0; tries < 2; tries++) {
    await settled();
    scripted.taken[0]!.die();
  }
  expect(await lost).toBeNull();
});

test('a class whose drill could not be made ready is refused for now, and nothing is opened', async () => {
  const at = await startServer({ seed: 'drills', drills: { prepare: async () => null } });
  onTestFinished(() => at.stop());
  const response = await post(`${at.url}${CLASSES_PATH}`, { drill: DRILL, terms: TERMS, card: null });
  expect([response.status, (await response.json()).code]).toEqual([503, 'try-later']);
  expect(await at.store.count()).toBe(0);
});
