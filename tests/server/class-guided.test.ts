// A class with guided deals: all tables continue from the teacher's choice, and each player keeps the own choices.
import { expect, onTestFinished, test } from 'vitest';
import type { Store } from '../../server/ports.ts';
import { replayRoom } from '../../server/room/room.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import type { Drill } from '../../shared-engine/drill/format.ts';
import type { GuidedDeal } from '../../shared-engine/protocol/class.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { FULL_SET, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import {
  act,
  bigScreenOf,
  dashboardOf,
  type JoinedPlayer,
  joinAll,
  joinClass,
  openClass,
  reportOf,
  type Teacher,
} from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { anyAnswer, isAsked, isClosed, ownView, pass, sitDown } from '../kit/http-client.ts';
import { houseKernel } from '../kit/reviews.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer, type TestServerOptions } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

const DRILL: Drill = {
  ...drillOf([
    dealOf({ kind: 'random', seed: seedNamed('line one') }, { id: 'one', seat: 3, dealer: 3 }),
    dealOf({ kind: 'random', seed: seedNamed('line two') }, { id: 'two' }),
  ]),
  form: 'guided',
};

interface Led {
  readonly at: TestServer;
  readonly teacher: Teacher;
  readonly players: readonly JoinedPlayer[];
  readonly peers: readonly Peer[];
}

/** The class was told that choices of single players are shown. */
async function led(
  names: readonly string[],
  options: TestServerOptions & { deadline?: number } = {},
): Promise<Led> {
  const at = await startServer({ seed: 'line', ...options });
  onTestFinished(() => at.stop());
  const { deadline = null } = options;
  const teacher = await openClass(at, DRILL, { names: true, deadline });
  const { players, peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  return { at, teacher, players, peers };
}

async function guidedDealOf({ at, teacher }: Led): Promise<GuidedDeal> {
  const { guidedDeal } = await dashboardOf(at, teacher);
  if (guidedDeal === null) throw new Error('no guided deal is played');
  return guidedDeal;
}

/** Each player answers the open step in a way of its own; resolves when all three bots have, too. */
async function chooseApart({ peers }: Pick<Led, 'peers'>, name: string): Promise<void> {
  for (const [place, peer] of peers.entries()) {
    if (!isAsked(peer)) continue;
    const answer = await peer.choose(anyAnswer(ownView(peer), stream(name, `player ${place}`)));
    if (answer.kind === 'rejected') throw new Error(answer.message);
  }
  await Promise.all(
    peers.map((peer) => peer.untilTable(({ controls: now }) => now?.held === true, 'the hold')),
  );
}

async function advance(class_: Led, choice: AnswerChoice | null, stepIndex: number): Promise<void> {
  const response = await act(class_.at, class_.teacher, { kind: 'advance', stepIndex, choice });
  expect(response.status).toBe(200);
  const isThere = (peer: Peer) => ownView(peer).record.actualSteps?.length === stepIndex + 1;
  await Promise.all(class_.peers.map((peer) => peer.untilTable(() => isThere(peer), 'the class')));
}

test('L1 all tables continue from the teacher’s choice with the same tiles and close at the same time', async () => {
  const class_ = await led(['Ines', 'Tomas', 'Wilma']);
  const { peers, at, players } = class_;
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `step ${place}`);
    const guided = await guidedDealOf(class_);
    expect([guided.stepIndex, guided.waiting]).toEqual([place, 0]);
    await advance(class_, guided.chosen.at(-1)?.choice ?? null, place);
    const [first, ...others] = peers.map((peer) => ownView(peer));
    for (const view of others) {
      expect([view.rack, view.record.steps, view.stage]).toEqual([
        first!.rack,
        first!.record.steps,
        first!.stage,
      ]);
    }
  }
  expect(peers.map(isClosed)).toEqual([true, true, true]);
  for (const { code } of players) {
    const round = replayRoom((await eventsOf(at.store, code))!)!.play!.round;
    expect(round.racks.map(sizeOf)).toEqual([14, 13, 13, 13]);
    const held = round.racks.reduce((sum, rack) => sum.map((count, face) => count + rack[face]!));
    expect(held.every((count, face) => count <= FULL_SET[face]!)).toBe(true);
  }
});

test('L2 the review rates what the player chose by the tiles held then, whatever the class continued from', async () => {
  const class_ = await led(['Ines', 'Tomas']);
  const { peers } = class_;
  const own: string[][] = [[], []];
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `own ${place}`);
    for (const [player, peer] of peers.entries()) {
      const step = ownView(peer).record.steps.at(-1)!;
      own[player]!.push(step.kind === 'move' ? step.gave.join() : '');
    }
    await advance(class_, (await guidedDealOf(class_)).chosen[0]?.choice ?? null, place);
  }
  for (const [player, peer] of peers.entries()) {
    const { record } = ownView(peer);
    const gave = record.actualSteps!.map((step) => (step?.kind === 'move' ? step.gave.join() : ''));
    expect(gave).toEqual(own[player]);
    const { review } = await peer.review();
    expect(review).toEqual(reviewRound(record, houseKernel));
    const passes = review.choices.flatMap((one) =>
      one.kind === 'pass' ? [[...one.played.tiles].sort().join()] : [],
    );
    expect(passes).toEqual(
      gave.filter((tiles) => tiles !== '').map((tiles) => tiles.split(',').sort().join()),
    );
  }
  expect((await peers[0]!.review()).review).not.toEqual((await peers[1]!.review()).review);
});

test('E1 a guided deal does not continue before all have chosen, from an illegal choice, or twice from one step', async () => {
  const class_ = await led(['Ines', 'Tomas']);
  const { at, teacher, peers } = class_;
  const refused = async (choice: AnswerChoice | null, stepIndex: number) => {
    const response = await act(at, teacher, { kind: 'advance', stepIndex, choice });
    return (await response.json()).code;
  };
  const [ines] = peers as [Peer, Peer];
  const rack = ownView(ines).rack;
  const pass = { kind: 'pass', step: 'first-right', tiles: rack.slice(0, 3), blind: 0 } as const;
  await ines.choose(pass);
  await ines.untilTable(({ controls: now }) => now?.held === true, 'the hold');
  expect(await ines.choose(anyAnswer(ownView(ines), stream('too', 'early')))).toMatchObject({ code: 'held' });
  expect(await refused(pass, 0)).toBe('not-all-chosen');
  expect(await (await act(at, teacher, { kind: 'deal-next' })).json()).toMatchObject({ code: 'deal-open' });
  await act(at, teacher, { kind: 'stand-in', player: 1, on: true });
  await peers[1]!.untilTable(({ controls: now }) => now?.held === true, 'the stand-in');
  expect(await refused({ ...pass, tiles: rack.slice(0, 2) }, 0)).toBe('wrong-count');
  expect(await refused({ ...pass, tiles: ['joker', 'joker', 'joker'] }, 0)).toBe('joker-in-pass');
  const foreign = FACES.find((face) => face !== 'joker' && !rack.includes(face))!;
  expect(await refused({ ...pass, tiles: [foreign, ...rack.slice(0, 2)] }, 0)).toBe('tile-not-held');
  expect(await refused({ ...pass, blind: 1, tiles: rack.slice(0, 2) }, 0)).toBe('blind-not-allowed');
  expect(await refused({ kind: 'ask', step: 'courtesy-ask', count: 4 }, 0)).toBe('bad-request');
  expect(await refused({ kind: 'vote', step: 'vote', go: true }, 0)).toBe('wrong-step');
  expect(await refused(null, 0)).toBe('wrong-step');
  expect((await guidedDealOf(class_)).stepIndex).toBe(0);
  await advance(class_, pass, 0);
  expect(await refused(pass, 0)).toBe('already-advanced');
});

test('L1 a guided deal can continue from a pass that nobody made, with the bots’ choices of every table', async () => {
  const class_ = await led(['Ines']);
  const [ines] = class_.peers as [Peer];
  await chooseApart(class_, 'somebody');
  const before = ownView(ines).record.steps[0]!;
  const { rack, chosen } = await guidedDealOf(class_);
  const gave = chosen[0]!.choice.kind === 'pass' ? chosen[0]!.choice.tiles : [];
  const tiles = rack.filter((face) => face !== 'joker' && !gave.includes(face)).slice(0, 3);
  await advance(class_, { kind: 'pass', step: 'first-right', tiles, blind: 0 }, 0);
  const after = ownView(ines).record.steps[0]!;
  expect(
    before.kind === 'move' && after.kind === 'move' && [before.received, [...after.gave].sort()],
  ).toEqual([after.kind === 'move' && after.received, [...tiles].sort()]);
});

test('a late player joins a guided deal where it is now; the report counts each choice at its own step', async () => {
  const class_ = await led(['Ines', 'Tomas']);
  const { at, teacher } = class_;
  await chooseApart(class_, 'before');
  await advance(class_, (await guidedDealOf(class_)).chosen[0]!.choice, 0);
  const late = await sitDown(at, await joinClass(at, teacher.code, 'Odo'));
  await late.untilTable(
    () => late.table.view !== null && ownView(late).record.actualSteps?.length === 1,
    'the line',
  );
  expect(ownView(late).rack).toEqual(ownView(class_.peers[0]!).rack);
  const peers = [...class_.peers, late];
  await chooseApart({ peers }, 'with the late one');
  const [deal] = (await reportOf(at, teacher)).deals;
  expect(deal!.steps.map(({ step, players, stoodIn }) => [step, players, stoodIn])).toEqual([
    ['first-right', 2, 0],
    ['first-across', 3, 0],
  ]);
  const choice = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;
  await act(at, teacher, { kind: 'show', shown: choice });
  const bigScreen = await bigScreenOf(at, teacher);
  expect(bigScreen.answered).toBe(2);
  expect(bigScreen.spread!.choices.map(({ chosen }) => chosen)).toContainEqual(
    bigScreen.spread!.advancedWith,
  );
  expect(deal!.steps.map(({ advancedWith }) => advancedWith)).toEqual([
    bigScreen.spread!.advancedWith,
    undefined,
  ]);
  await act(at, teacher, { kind: 'show', shown: { ...choice, revealed: false } });
  expect((await bigScreenOf(at, teacher)).spread).toBeNull();
  await act(at, teacher, { kind: 'show', shown: { ...choice, step: 'first-across' } });
  expect((await bigScreenOf(at, teacher)).spread).not.toHaveProperty('advancedWith');
});

test('the dashboard of a guided deal says who has chosen and who is held, and a hold works as in any deal', async () => {
  const class_ = await led(['Ines', 'Tomas']);
  const { at, teacher, peers } = class_;
  const shown = async () =>
    (await dashboardOf(at, teacher)).players.map((player) => [player.at, player.submitted, player.held]);
  await act(at, teacher, { kind: 'hold', before: 'first-across' });
  await chooseApart({ peers: peers.slice(0, 1) }, 'first alone');
  expect(await shown()).toEqual([
    ['first-right', true, false],
    ['first-right', false, false],
  ]);
  await chooseApart({ peers: peers.slice(1) }, 'then the other');
  await advance(class_, (await guidedDealOf(class_)).chosen[0]!.choice, 0);
  expect(await shown()).toEqual([
    ['first-across', false, true],
    ['first-across', false, true],
  ]);
  expect(await peers[0]!.choose(anyAnswer(ownView(peers[0]!), stream('held', 'line')))).toMatchObject({
    code: 'held',
  });
  await act(at, teacher, { kind: 'hold', before: null });
  await Promise.all(peers.map((peer) => peer.untilTable(({ controls: now }) => now?.held === false, 'free')));
  await chooseApart(class_, 'after the hold');
  expect((await guidedDealOf(class_)).waiting).toBe(0);
});

test('E2 a guided deal and every player’s own choices survive a restart of the server', async () => {
  const place = new Map();
  const class_ = await led(['Ines', 'Tomas'], { store: memoryStore(place) });
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
  const class_ = await led(['Ines', 'Tomas'], { store });
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
  const class_ = await led(['Ines', 'Tomas'], { store });
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
  const class_ = await led(['Ines'], { deadline: 60 });
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
  const class_ = await led(['Ines']);
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
  const class_ = await led(['Ines']);
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
  const class_ = await led(['Ines']);
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
