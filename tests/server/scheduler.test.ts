// What a server does by itself in a room, where its answers and its state of the room do not agree.
import { expect, test } from 'vitest';
import { ACCEPTED, reject } from '../../server/aggregate/decision.ts';
import { replay } from '../../server/aggregate/replay.ts';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import { SOLO_TABLE } from '../../server/room/policy.ts';
import { ROOM } from '../../server/room/room.ts';
import { Scheduler } from '../../server/schedule/scheduler.ts';
import { onlyNode } from '../../server/store/nodes-memory.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { FakeClock } from '../kit/clock.ts';
import { nextTurn } from '../kit/fake-workers.ts';
import { ALONE, anyAnswer, openRoom, sitDown } from '../kit/http-client.ts';
import { seededEntropy, settings, startServer } from '../kit/server.ts';

test('SC2 an action that another server has stored already waits a second for what it brought, and is not done over and over', async () => {
  const server = await startServer({ settings: { BOT_DELAY_MS: '60000' } });
  const peer = await sitDown(server, await openRoom(server, ALONE));
  const { code } = await peer.untilTable(({ round }) => round === 1);
  const { states } = replay(ROOM, (await server.store.history(code))!)!;
  await server.stop();
  let submitted = 0;
  const room = {
    code,
    state: states.at(-1)!,
    async submit() {
      submitted++;
      // Over and over would never end by itself.
      return submitted < 10 ? ACCEPTED : reject('try-later');
    },
  };
  const clock = new FakeClock();
  const entropy = seededEntropy('scheduler');
  const random = stream('scheduler', 'bot');
  const scheduler = new Scheduler(
    { room, policy: SOLO_TABLE, card: playingCard({ kind: 'house' }), stepSince: () => 0 },
    {
      bots: { choose: async ({ view }) => anyAnswer(view, random) },
      clock,
      entropy,
      nodes: onlyNode(entropy),
      timing: settings({ BOT_DELAY_MS: '0' }).timing,
      log: createLog('silent'),
    },
  );
  scheduler.wake();
  await nextTurn();
  clock.advance(999);
  await nextTurn();
  expect(submitted).toBe(1);
  clock.advance(1);
  await nextTurn();
  expect(submitted).toBe(2);
  scheduler.stop();
});
