// What nobody in a class may find out: another player's rack, a name beside a choice, the teacher's pages.
import { expect, onTestFinished, test } from 'vitest';
import type { Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { classInfoSchema } from '../../shared-engine/protocol/class.ts';
import { classPath, roomPath, seatsPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { act, bigScreenOf, dashboardOf, joinAll, openClass, page, reportOf } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { ownView, playOn, post } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

async function server(): Promise<TestServer> {
  const started = await startServer({ seed: 'class canaries' });
  onTestFinished(() => started.stop());
  return started;
}

/** Three faces that nobody but the player holds: all their copies are in the rack set by hand. */
const CANARIES: readonly Face[] = ['bam-7', 'crak-7', 'dot-7'];
const PLANTED: Drill = drillOf([
  dealOf({
    kind: 'manual',
    racks: [CANARIES.flatMap((face) => [face, face, face, face]), [], [], []],
    seed: seedNamed('planted'),
  }),
]);
const random = (id: string): DrillDeal => dealOf({ kind: 'random', seed: seedNamed(id) }, { id });

test('no frame to a player holds another player’s name, and no other page a tile of the rack or a name beside a choice', async () => {
  const at = await server();
  const teacher = await openClass(at, PLANTED);
  const names = ['Nightingale', 'Woodpecker', 'Kingfisher'];
  const { players, peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1)));
  for (const peer of peers) await playOn(peer, peer.table.code);
  await Promise.all(peers.map((peer) => peer.review()));
  for (const [place, peer] of peers.entries()) {
    const frames = peer.frames.join('\n');
    for (const name of names) expect(frames.includes(name)).toBe(name === names[place]);
    for (const other of players) expect(frames.includes(other.code)).toBe(other === players[place]);
  }
  const choice = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;
  await act(at, teacher, { kind: 'show', shown: choice });
  const pages = [await bigScreenOf(at, teacher), await reportOf(at, teacher)].map((one) =>
    JSON.stringify(one),
  );
  for (const name of names) for (const text of pages) expect(text).not.toContain(name);
  // The mirror of the big screen shows the rack that the deal gave everybody.
  const { bigScreen, ...dashboard } = await dashboardOf(at, teacher);
  expect(bigScreen?.spread?.choices).toEqual([]);
  expect(JSON.stringify(dashboard)).not.toMatch(/-7|joker/);
  for (const line of at.logged) {
    for (const secret of [...names, teacher.code, teacher.secret, ...players.map(({ code }) => code)]) {
      expect(line).not.toContain(secret);
    }
    for (const face of CANARIES) expect(line).not.toContain(face);
  }
});

test('V2 the teacher sees racks if the class was told so before the deal', async () => {
  const at = await server();
  const teacher = await openClass(at, PLANTED, { racks: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.round === 1);
  expect((await dashboardOf(at, teacher)).players[0]!.rack).toEqual(ownView(peers[0]!).rack);
  const info = await (await fetch(`${at.url}${classPath(teacher.code)}`)).json();
  expect(info).toMatchObject({ terms: { racks: true }, teacher: false, player: null });
});

test('players have no card beside the rack if the class was told so before the deal', async () => {
  const at = await server();
  for (const cardClosed of [true, false]) {
    const teacher = await openClass(at, PLANTED, { cardClosed });
    const { peers } = await joinAll(at, teacher.code, ['Ines']);
    await act(at, teacher, { kind: 'deal-next' });
    await peers[0]!.untilTable((table) => table.round === 1);
    expect(peers[0]!.table.controls).toEqual({ held: false, standIn: false, cardClosed });
  }
});

test('R6 a player is told the number and the text of the deal at the own table, and plays it as it is scripted; the note stays on the dashboard', async () => {
  const at = await server();
  const drill = drillOf([
    { ...random('one'), title: 'Pairs', task: 'Which way do they point?', note: 'Ask Odo.' },
    dealOf(
      { kind: 'manual', racks: [[], [], [], []], seed: seedNamed('two') },
      {
        id: 'two',
        seat: 2,
        scripted: { arrivals: { 'first-right': ['dot-1', 'dot-2', 'west'] }, stopped: [0] },
      },
    ),
  ]);
  const teacher = await openClass(at, drill);
  const { peers, players } = await joinAll(at, teacher.code, ['Ines']);
  const told = async () => {
    const headers = { authorization: `Bearer ${players[0]!.classSecret}` };
    return (await fetch(`${at.url}${classPath(teacher.code)}`, { headers })).text();
  };
  const dealIn = (text: string) => classInfoSchema.parse(JSON.parse(text)).player!.deal;
  expect(dealIn(await told())).toBeNull();
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.round === 1);
  const text = await told();
  expect(dealIn(text)).toEqual({
    number: 1,
    of: 2,
    title: 'Pairs',
    task: 'Which way do they point?',
    scripted: false,
  });
  expect(text).not.toContain('Ask Odo.');
  await playOn(peers[0]!, 'to the next');
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.round === 2);
  expect(dealIn(await told())).toEqual({ number: 2, of: 2, title: null, task: null, scripted: true });
  expect((await dashboardOf(at, teacher)).deals[0]!.note).toBe('Ask Odo.');
  await playOn(peers[0]!, 'the scripted one');
  const [first, , , vote] = ownView(peers[0]!).record.steps;
  expect(first).toMatchObject({ received: ['dot-1', 'dot-2', 'west'] });
  // The deal was made for seat 2; at the tables of the class its player sits on seat 0.
  expect(vote).toMatchObject({ go: { 1: true, 2: false, 3: true } });
});

test('the report names players, with sums alone, if the class was told so', async () => {
  const at = await server();
  const teacher = await openClass(at, PLANTED, { names: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.round === 1);
  await playOn(peers[0]!, 'named');
  const { review } = await peers[0]!.review();
  const { toGoStart, toGoEnd } = review;
  const sums = { toGoStart, toGoEnd, winsLost: null, stoodIn: 0 };
  await expect
    .poll(async () => (await reportOf(at, teacher)).players)
    .toEqual([{ name: 'Ines', deals: [{ deal: 'first', ...sums }] }]);
});

test('a table of a class is open to its player alone: nobody else may watch it, sit down at it or look it up', async () => {
  const at = await server();
  const teacher = await openClass(at, PLANTED);
  const { players, peers } = await joinAll(at, teacher.code, ['Ines', 'Tomas']);
  const [ines, tomas] = players as [(typeof players)[0], (typeof players)[0]];
  for (const secret of [undefined, tomas.secret, teacher.secret, ines.classSecret]) {
    const ticket = await post(`${at.url}${ticketPath(ines.code)}`, {}, secret);
    const seat = await post(`${at.url}${seatsPath(ines.code)}`, { name: 'Odo', seat: 1 }, secret);
    expect([ticket.status, seat.status]).toEqual([404, 404]);
  }
  expect((await fetch(`${at.url}${roomPath(ines.code)}`)).status).toBe(404);
  for (const what of [
    { kind: 'leave' },
    { kind: 'unseat', seat: 1 },
    { kind: 'seat-bot', seat: 1, style: 'strong' },
  ] as const) {
    expect(await peers[0]!.act(what)).toMatchObject({ kind: 'rejected', code: 'teacher-controlled' });
  }
});

test.each(['dashboard', 'big-screen', 'report'] as const)('the %s is for the teacher alone', async (part) => {
  const at = await server();
  const teacher = await openClass(at, PLANTED);
  const { players } = await joinAll(at, teacher.code, ['Ines']);
  for (const secret of ['', players[0]!.secret, players[0]!.classSecret]) {
    const response = await page(at, { code: teacher.code, secret }, part);
    expect([response.status, await response.json()]).toMatchObject([403, { code: 'not-the-teacher' }]);
  }
  const end = await act(at, { code: teacher.code, secret: players[0]!.classSecret }, { kind: 'end' });
  expect(end.status).toBe(403);
  const gone = await page(at, { ...teacher, code: 'ABCDEFGH' }, part);
  expect([gone.status, await gone.json()]).toMatchObject([404, { code: 'no-such-class' }]);
});

test('an ended class admits nobody and deals no more; what was played is still in the report', async () => {
  const at = await server();
  const teacher = await openClass(at, drillOf([random('one'), random('two')]), { names: true });
  const { peers } = await joinAll(at, teacher.code, ['Ines']);
  await act(at, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable((table) => table.round === 1);
  await act(at, teacher, { kind: 'end' });
  const late = await post(`${at.url}${classPath(teacher.code, 'players')}`, { name: 'Odo' });
  expect([late.status, await late.json()]).toMatchObject([409, { code: 'class-over' }]);
  expect((await act(at, teacher, { kind: 'deal-next' })).status).toBe(409);
  await playOn(peers[0]!, 'after the end');
  await expect.poll(async () => (await reportOf(at, teacher)).deals[0]!.toGoEnd?.n).toBe(1);
});

test('four players share a table if the drill says so, and each seat has a spread of its own', async () => {
  const at = await server();
  const teacher = await openClass(at, { ...drillOf([random('four')]), form: 'tables' }, { names: true });
  const names = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa'];
  const { players, peers } = await joinAll(at, teacher.code, names);
  expect(new Set(players.slice(0, 4).map(({ code }) => code)).size).toBe(1);
  expect(players.map(({ seat }) => seat)).toEqual([0, 1, 2, 3, 0]);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable((table) => table.round === 1)));
  expect(ownView(peers[4]!).rack).toEqual(ownView(peers[0]!).rack);
  await Promise.all(peers.map((peer) => playOn(peer, peer.table.code)));
  const [deal] = (await reportOf(at, teacher)).deals;
  const first = deal!.steps.filter(({ step }) => step === 'first-right');
  expect(first.map(({ seat, players: count }) => [seat, count])).toEqual([
    [0, 2],
    [1, 1],
    [2, 1],
    [3, 1],
  ]);
});
