// A class on the server: the same tiles at every table, late players, holds, stand-ins, the big screen, the report.
import { expect, onTestFinished, test } from 'vitest';
import { memoryStore } from '../../server/store/memory.ts';
import type { Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { classPath } from '../../shared-engine/protocol/paths.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import {
  act,
  bigScreenOf,
  dashboardOf,
  joinAll,
  joinClass,
  openClass,
  page,
  reportOf,
} from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { anyAnswer, isAsked, isClosed, ownView, pass, playOn, post, sitDown } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer, type TestServerOptions } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

const random = (name: string, extra: Partial<DrillDeal> = {}): DrillDeal =>
  dealOf({ kind: 'random', seed: seedNamed(name) }, { id: name, ...extra });

const DRILL: Drill = drillOf([random('one'), random('two', { seat: 2, dealer: 2 }), random('three')]);

async function server(options: TestServerOptions = {}): Promise<TestServer> {
  const started = await startServer({ seed: 'class', ...options });
  onTestFinished(() => started.stop());
  return started;
}

async function untilRound(peers: readonly Peer[], round: number): Promise<void> {
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === round, 'the deal')));
}

test('every player is dealt the same tiles at a separate table, and equal choices have equal consequences', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas', 'Wilma']);
  expect(new Set(players.map(({ code }) => code)).size).toBe(3);
  expect(peers.map(({ table }) => table.view)).toEqual([null, null, null]);
  expect((await act(at, teacher, { kind: 'deal-next' })).status).toBe(200);
  await untilRound(peers, 1);
  const racks = peers.map((peer) => ownView(peer).rack);
  expect(racks[1]).toEqual(racks[0]);
  expect(racks[2]).toEqual(racks[0]);
  expect(ownView(peers[0]!).commitment).toBeNull();
  for (const peer of peers.slice(0, 2)) await playOn(peer, 'alike');
  expect(ownView(peers[1]!).record).toEqual(ownView(peers[0]!).record);
  const [first, second] = [await peers[0]!.review(), await peers[1]!.review()];
  expect(second.review).toEqual(first.review);
});

test('a player is told that a bot plays at the seat, and when the player has the seat back', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  await act(at, teacher, { kind: 'hold', before: 'first-right' });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  for (const on of [true, false]) {
    await act(at, teacher, { kind: 'stand-in', player: 0, on });
    await peers[0]!.untilTable((table) => table.controls?.standIn === on, 'word of the stand-in');
  }
});

test('nobody gets past a hold, whatever a player sends, and the release lets all continue', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  await act(at, teacher, { kind: 'hold', before: 'first-across' });
  const { peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  const [ines] = peers as [Peer, Peer];
  await playOn(ines, 'held', (view) => view.record.steps.length === 1);
  const rejected = await ines.choose(anyAnswer(ownView(ines), stream('held', 'answer')));
  expect(rejected).toMatchObject({ kind: 'rejected', code: 'held' });
  expect(ines.table.controls).toMatchObject({ held: true, standIn: false });
  const [first, second] = (await dashboardOf(at, teacher)).players;
  expect([first!.at, first!.held, second!.at, second!.held]).toEqual([
    'first-across',
    true,
    'first-right',
    false,
  ]);
  await act(at, teacher, { kind: 'hold', before: null });
  await ines.untilTable((table) => table.controls?.held === false, 'the release');
  expect(await ines.choose(anyAnswer(ownView(ines), stream('held', 'answer')))).toMatchObject({
    kind: 'ack',
  });
});

test('a late player starts with the current deal and continues with the class', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL, { names: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  await playOn(peers[0]!, 'first deal');
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 2);
  const late = await sitDown(at, await joinClass(at, teacher.code, 'Odo'));
  await untilRound([late], 1);
  expect(ownView(late).rack).toEqual(ownView(peers[0]!).rack);
  await playOn(late, 'late');
  await playOn(peers[0]!, 'second deal');
  const report = await reportOf(at, teacher);
  expect(report.deals.map(({ deal, players }) => [deal, players])).toEqual([
    ['one', 1],
    ['two', 2],
  ]);
});

test('a player who still plays the deal before asks for the next one after the review, and no deal is skipped', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL, { names: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  await playOn(peers[0]!, 'quick');
  await act(at, teacher, { kind: 'deal-next' });
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound([peers[0]!], 2);
  expect((await dashboardOf(at, teacher)).players.map(({ deal }) => deal)).toEqual([2, 1]);
  for (const [place, peer] of peers.entries()) {
    await playOn(peer, `deal ${2 - place}`);
    await peer.review();
    expect(await peer.act({ kind: 'ready', ready: true })).toMatchObject({ kind: 'ack' });
    await untilRound([peer], 3 - place);
  }
  const rejected = await act(at, teacher, { kind: 'deal-next' });
  expect([rejected.status, await rejected.json()]).toMatchObject([409, { code: 'no-more-deals' }]);
});

test('a bot finishes for a player who is away, and the spread counts it separately', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL, { names: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  await act(at, teacher, { kind: 'stand-in', player: 1, on: true });
  await peers[1]!.untilTable(() => isClosed(peers[1]!), 'the close');
  await playOn(peers[0]!, 'own');
  const [first] = (await reportOf(at, teacher)).deals[0]!.steps;
  expect([first!.players, first!.stoodIn]).toEqual([1, 1]);
  expect((await act(at, teacher, { kind: 'stand-in', player: 9, on: true })).status).toBe(404);
});

test('K1 more time moves the deadline of the open step alone, and the clock of a held table stands still', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL, { deadline: 60 });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  const [ines] = peers as [Peer];
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  await act(at, teacher, { kind: 'more-time', player: 0, seconds: 90 });
  await ines.untilTable((table) => (table.remaining ?? 0) > 60_000, 'more time');
  await act(at, teacher, { kind: 'hold', before: 'first-right' });
  await ines.untilTable((table) => table.remaining === null, 'the hold');
  await pass(at, 10 * 60_000, peers);
  await act(at, teacher, { kind: 'hold', before: null });
  await ines.untilTable((table) => table.remaining !== null, 'the release');
  expect(isAsked(ines)).toBe(true);
});

test('a class continues after a restart of the server with the same tables, dashboard and report', async () => {
  const place = new Map();
  const before = await startServer({ seed: 'class down', store: memoryStore(place) });
  const teacher = await openClass(before, DRILL, { names: true });
  const { players, peers } = await joinAll(before, teacher.code, ['Ines', 'Tomas']);
  await act(before, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  await playOn(peers[0]!, 'before');
  await expect.poll(async () => (await reportOf(before, teacher)).deals[0]!.toGoEnd).not.toBeNull();
  const report = await reportOf(before, teacher);
  await before.stop();
  const after = await server({ seed: 'class up', store: memoryStore(place) });
  expect(await reportOf(after, teacher)).toEqual(report);
  await act(after, teacher, { kind: 'deal-next' });
  const again = await sitDown(after, players[0]!);
  await untilRound([again], 2);
});

test('the dashboard is answered when something changes, and not before', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL);
  const { version } = await dashboardOf(at, teacher);
  let answered = false;
  const asked = page(at, teacher, 'dashboard', `?seen=${version}`).then((response) => {
    answered = true;
    return response.json();
  });
  await post(`${at.url}${classPath(teacher.code)}`, {});
  expect(answered).toBe(false);
  await joinClass(at, teacher.code, 'Ines');
  expect((await asked).players).toHaveLength(1);
});

test('the big screen shows the rack before the reveal, and the spread after it', async () => {
  const at = await server();
  const teacher = await openClass(at, DRILL, { names: true });
  const { peers, players } = await joinAll(at, teacher.code, ['Ines', 'Tomas', 'Wilma']);
  await act(at, teacher, { kind: 'deal-next' });
  await untilRound(peers, 1);
  const aims = { step: 'first-right', sections: ['stairs'] };
  await post(`${at.url}${classPath(teacher.code, 'aims')}`, aims, players[0]!.classSecret);
  for (const [place, peer] of peers.entries()) {
    await playOn(peer, place === 2 ? 'other' : 'same', (view) => view.record.steps.length === 1);
  }
  const choice = { seat: 0, step: 'first-right', kind: 'pass', revealed: false } as const;
  await act(at, teacher, { kind: 'show', shown: choice });
  const hidden = await bigScreenOf(at, teacher);
  expect(hidden.rack).toHaveLength(13);
  expect([hidden.answered, hidden.spread]).toEqual([3, null]);
  await act(at, teacher, { kind: 'show', shown: { ...choice, revealed: true } });
  const { spread } = await bigScreenOf(at, teacher);
  expect(spread!.choices.map(({ count }) => count)).toEqual([2, 1]);
  expect(spread!.aims).toEqual([{ section: 'stairs', count: 1, share: 1 }]);
});
