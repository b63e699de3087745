// Guided deals over restarts, at tables that are behind or left, and to the end of the class.
import { expect, onTestFinished, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { replayRoom } from '../../server/room/room.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { act, dashboardOf, joinClass, reportOf } from '../kit/class-room.ts';
import { advance, chooseApart, guidedClass, guidedDealOf } from '../kit/guided-class.ts';
import { anyAnswer, isAsked, isClosed, ownView, pass, sitDown } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

test('E2 a guided deal and every player’s own choices survive a restart of the server', async () => {
  const place = new Map();
  const class_ = await guidedClass(['Ines', 'Tomas'], { store: memoryStore(place) });
  await chooseApart(class_, 'kept');
  await advance(class_, (await guidedDealOf(class_)).chosen.at(-1)!.choice, 0);
  await chooseApart(class_, 'kept too');
  const [guided, report] = [await guidedDealOf(class_), await reportOf(class_.at, class_.teacher)];
  await class_.at.stop();
  const at = await startServer({ seed: 'line again', store: memoryStore(place) });
  onTestFinished(() => at.stop());
  expect(await reportOf(at, class_.teacher)).toEqual(report);
  const peers = await Promise.all(class_.players.map((player) => sitDown(at, player)));
  const again = { ...class_, at, peers };
  expect(await guidedDealOf(again)).toEqual(guided);
  await advance(again, guided.chosen[0]!.choice, 1);
});

test('L1 a table that was busy when the guided deal closed gets the next deal all the same', async () => {
  const memory = memoryStore();
  let letGo = () => {};
  let busy: { readonly code: string; readonly free: Promise<void> } | null = null;
  let met = () => {};
  const store: Store = {
    ...memory,
    // The table is behind: its appends conflict, and what is new there takes long to load.
    async commit(batch) {
      const others = await memory.commit(batch.filter(({ code }) => code !== busy?.code));
      const outcomes = [...others];
      return batch.map(({ code }) => (code === busy?.code ? 'conflict' : outcomes.shift()!));
    },
    async loadAfter(code, version) {
      if (busy?.code === code) {
        met();
        await busy.free;
      }
      return memory.loadAfter(code, version);
    },
  };
  const class_ = await guidedClass(['Ines', 'Tomas'], { store });
  const { at, teacher, peers, players } = class_;
  for (let stepIndex = 0; ; stepIndex++) {
    await chooseApart(class_, `busy ${stepIndex}`);
    const { step, chosen } = await guidedDealOf(class_);
    const choice = chosen[0]?.choice ?? null;
    if (step !== 'courtesy-pass') {
      await advance(class_, choice, stepIndex);
      continue;
    }
    const isBusy = new Promise<void>((resolve) => {
      met = resolve;
    });
    busy = {
      code: players[1]!.code,
      free: new Promise((resolve) => {
        letGo = resolve;
      }),
    };
    const again = sitDown(at, players[1]!);
    await isBusy;
    const last = act(at, teacher, { kind: 'advance', stepIndex, choice });
    await peers[0]!.untilTable(() => isClosed(peers[0]!), 'the close');
    const next = act(at, teacher, { kind: 'deal-next' });
    await peers[0]!.untilTable(({ round }) => round === 2, 'the next deal');
    busy = null;
    letGo();
    expect([(await last).status, (await next).status]).toEqual([200, 200]);
    const late = await again;
    await late.untilTable(({ round }) => round === 2, 'the next deal');
    const kept = replayRoom((await eventsOf(at.store, players[1]!.code))!)!;
    expect(kept.play!.number).toBe(2);
    await chooseApart({ peers: [peers[0]!, late] }, 'after all');
    expect((await guidedDealOf(class_)).waiting).toBe(0);
    return;
  }
});

test('L1 the table of a player who is away gets a missed deal later, and a bot chooses there', async () => {
  const memory = memoryStore();
  let away: string | null = null;
  const store: Store = {
    ...memory,
    commit: (batch) =>
      batch.some(({ code }) => code === away) ? Promise.reject(new Error('away')) : memory.commit(batch),
  };
  const class_ = await guidedClass(['Ines', 'Tomas'], { store });
  const { at, teacher, peers, players } = class_;
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `away ${place}`);
    await advance(class_, (await guidedDealOf(class_)).chosen[0]?.choice ?? null, place);
  }
  const [ines, tomas] = peers as [Peer, Peer];
  await tomas.close();
  await act(at, teacher, { kind: 'stand-in', player: 1, on: true });
  away = players[1]!.code;
  await act(at, teacher, { kind: 'deal-next' });
  away = null;
  await act(at, teacher, { kind: 'hold', before: 'vote' });
  await ines.untilTable(({ round }) => round === 2, 'the next deal');
  await chooseApart({ peers: [ines] }, 'the one who is here');
  await expect.poll(async () => (await guidedDealOf(class_)).waiting).toBe(0);
});

test('K1 the time of a step begins when the guided deal continues, without time added to the step before', async () => {
  const class_ = await guidedClass(['Ines'], { deadline: 60 });
  const { at, teacher, peers } = class_;
  await act(at, teacher, { kind: 'more-time', player: null, seconds: 30 });
  await chooseApart(class_, 'in time');
  await act(at, teacher, { kind: 'more-time', player: null, seconds: 30 });
  await pass(at, 300_000, peers);
  expect(peers[0]!.table.remaining).toBeNull();
  expect((await dashboardOf(at, teacher)).players[0]!.remaining).toBeNull();
  await advance(class_, (await guidedDealOf(class_)).chosen[0]!.choice, 0);
  expect(peers[0]!.table.remaining).toBe(60_000);
});

test('a player who joins after a guided deal is closed begins with the next deal', async () => {
  const class_ = await guidedClass(['Ines']);
  const { at, teacher, peers } = class_;
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `before the late one ${place}`);
    await advance(class_, (await guidedDealOf(class_)).chosen[0]?.choice ?? null, place);
  }
  const late = await sitDown(at, await joinClass(at, teacher.code, 'Odo'));
  expect(late.table).toMatchObject({ round: 0, view: null });
  await act(at, teacher, { kind: 'deal-next' });
  await late.untilTable(({ round }) => round === 1, 'the next deal');
  await peers[0]!.untilTable(({ round }) => round === 2, 'the next deal');
  expect(ownView(late).rack).toEqual(ownView(peers[0]!).rack);
  await chooseApart({ peers: [...peers, late] }, 'together');
  expect((await guidedDealOf(class_)).waiting).toBe(0);
});

test('Z1 a table that waited for the guided deal to close closes when the class ends', async () => {
  const class_ = await guidedClass(['Ines']);
  const { at, teacher, peers } = class_;
  for (let place = 0; ; place++) {
    await chooseApart(class_, `to the last ${place}`);
    const { step, chosen } = await guidedDealOf(class_);
    if (step === 'courtesy-pass') break;
    await advance(class_, chosen[0]?.choice ?? null, place);
  }
  expect(isClosed(peers[0]!)).toBe(false);
  await act(at, teacher, { kind: 'end' });
  await peers[0]!.untilTable(() => isClosed(peers[0]!), 'the close');
  expect((await peers[0]!.review()).review.choices.length).toBeGreaterThan(3);
});

test('when the class ends during a guided deal, each table continues by itself to the close', async () => {
  const class_ = await guidedClass(['Ines']);
  const { at, teacher, peers } = class_;
  const [ines] = peers as [Peer];
  await chooseApart(class_, 'first');
  await act(at, teacher, { kind: 'end' });
  while (!isClosed(ines)) {
    await ines.untilTable(() => isAsked(ines) || isClosed(ines), 'a question or the close');
    if (!isClosed(ines)) await ines.choose(anyAnswer(ownView(ines), stream('after', 'the end')));
  }
  expect((await ines.review()).review.choices.length).toBeGreaterThan(3);
});
