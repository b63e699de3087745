// Who comes back to a class, at whichever of two servers: a player with a bot on the seat, a second desk, nobody at all.
import { expect, onTestFinished, test } from 'vitest';
import { POLL_MS } from '../../server/registry/version-watch.ts';
import { dashboardSchema } from '../../shared-engine/protocol/class.ts';
import { classPath, classPersonalDataPath } from '../../shared-engine/protocol/paths.ts';
import { CLOSE } from '../../shared-engine/protocol/version.ts';
import { act, dashboardOf, joinAll, joinClass, openClass, page, reportOf } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { analysisByDecision, answering } from '../kit/fake-analysis.ts';
import { isAsked, isClosed, ownView, playOn, post, sitDown } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';
import { startTwoServers } from '../kit/two-servers.ts';

const DRILL = drillOf([
  dealOf({ kind: 'random', seed: seedNamed('back one') }),
  dealOf({ kind: 'random', seed: seedNamed('back two') }, { id: 'second' }),
]);

test('CH1 a player who comes back has the seat back from the bot at once, and the choices of the bot are not counted', async () => {
  const at = await startServer({ seed: 'returns', bots: { choose: () => new Promise(() => {}) } });
  onTestFinished(() => at.stop());
  const teacher = await openClass(at, DRILL, { names: true });
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  await act(at, teacher, { kind: 'stand-in', player: 0, on: true });
  await peers[0]!.untilTable((table) => table.controls?.standIn === true, 'word of the bot');
  peers[0]!.socket.close();
  const back = await sitDown(at, players[0]!);
  await back.untilTable((table) => table.controls?.standIn === false, 'the seat');
  const [ines, tomas] = (await dashboardOf(at, teacher)).players;
  expect([ines!.standIn, ines!.present, tomas!.standIn]).toEqual([false, true, false]);
  // A player who is there may be helped on by a bot for as long as the teacher wants.
  await act(at, teacher, { kind: 'stand-in', player: 1, on: true });
  await peers[1]!.untilTable((table) => table.controls?.standIn === true, 'word of the bot');
  expect(isAsked(back)).toBe(true);
});

test('CH2 CH3 players are told at their tables that the class has ended, and whether they may ask the coach', async () => {
  const at = await startServer({ seed: 'returns' });
  onTestFinished(() => at.stop());
  const teacher = await openClass(at, DRILL, { names: true, coach: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.controls?.coach === true, 'word of the coach');
  expect(peers[0]!.table.controls).not.toHaveProperty('classOver');
  await act(at, teacher, { kind: 'end' });
  await peers[0]!.untilTable((table) => table.controls?.classOver === true, 'word of the end');
  const without = await openClass(at, DRILL);
  const other = await joinAll(at, without.code, ['Tomas']);
  expect(other.peers[0]!.table.controls).not.toHaveProperty('coach');
});

test('CA2 TK6 CH4 two servers deal a class once, tell one report, and the class is deleted from either of them', async () => {
  const options = { analyzer: answering(analysisByDecision) };
  const { here, there, rooms, clock } = await startTwoServers({}, options);
  onTestFinished(async () => void (await Promise.all([here.stop(), there.stop()])));
  const teacher = await openClass(here, DRILL, { names: true });
  const ines = await joinClass(here, teacher.code, 'Ines');
  const tomas = await joinClass(there, teacher.code, 'Tomas');
  const peers = [await sitDown(here, ines), await sitDown(there, tomas)];
  const dealt = await Promise.all(
    [here, there].map((at) => act(at, teacher, { kind: 'deal-next', dealt: 0 })),
  );
  expect(dealt.map(({ status }) => status)).toEqual([200, 200]);
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1, 'the deal')));
  await Promise.all(peers.map((peer) => playOn(peer, peer.table.code)));
  expect(peers.every((peer) => isClosed(peer) && ownView(peer).record.steps.length > 0)).toBe(true);
  const ready = async (at: typeof here) => {
    const { deals } = await reportOf(at, teacher);
    return deals.length === 1 && deals[0]!.pending === 0 && deals[0]!.toGoEnd?.n === 2;
  };
  await expect.poll(() => ready(here), { timeout: 10_000 }).toBe(true);
  await expect.poll(() => ready(there), { timeout: 10_000 }).toBe(true);
  expect(await reportOf(there, teacher)).toEqual(await reportOf(here, teacher));
  // A desk at the other server is told of what is done here, and does not wait for a class that is gone.
  const waitingHere = async () =>
    page(here, teacher, 'dashboard', `?seen=${(await dashboardOf(here, teacher)).version}`);
  const told = waitingHere();
  await act(there, teacher, { kind: 'joining', open: false });
  expect(dashboardSchema.parse(await (await told).json()).joiningOpen).toBe(false);
  const left = waitingHere();
  const headers = { authorization: `Bearer ${teacher.secret}` };
  const path = classPersonalDataPath(teacher.code);
  expect((await fetch(`${there.url}${path}`, { method: 'DELETE', headers })).status).toBe(204);
  expect(await Promise.all(peers.map((peer) => peer.ended))).toEqual([CLOSE.goingAway, CLOSE.goingAway]);
  clock.advance(POLL_MS);
  expect((await left).status).toBe(200);
  for (const at of [here, there]) expect((await page(at, teacher, 'dashboard')).status).toBe(404);
  expect(await rooms.count()).toBe(0);
});

test('CH5 who joins twice is told the place again, a name that is another’s gets a number, and who was removed stays out', async () => {
  const at = await startServer({ seed: 'returns' });
  onTestFinished(() => at.stop());
  const teacher = await openClass(at, DRILL);
  const first = await joinClass(at, teacher.code, 'Ines');
  const players = `${at.url}${classPath(teacher.code, 'players')}`;
  const twice = await post(players, { name: 'Ines' }, first.classSecret);
  expect([twice.status, await twice.json()]).toEqual([200, { room: first.code, seat: first.seat }]);
  await joinClass(at, teacher.code, 'Ines');
  const named = async () => (await dashboardOf(at, teacher)).players.map(({ name }) => name);
  expect(await named()).toEqual(['Ines', 'Ines (2)']);
  await act(at, teacher, { kind: 'remove', player: 0 });
  const removed = await post(players, { name: 'Ines' }, first.classSecret);
  expect([removed.status, (await removed.json()).code]).toEqual([403, 'removed']);
  expect(await named()).toEqual(['Ines (2)']);
});
