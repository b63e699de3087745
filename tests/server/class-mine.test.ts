// One's own data in a class: told to the pupil alone and forgotten on demand; the teacher has the whole class forgotten.
import { beforeEach, expect, onTestFinished, test } from 'vitest';
import { keyOf } from '../../server/secrets.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { classMinePath, classPath, stream, ticketPath } from '../../shared-engine/index.ts';
import { act, deskOf, joinAll, openClass, page, reportOf, type Teacher } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { anyAnswer, isAsked, ownView, playOn, post, sitDown } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer } from '../kit/server.ts';

const DRILL = drillOf([
  dealOf({ kind: 'random', seed: seedNamed('mine one') }),
  dealOf({ kind: 'random', seed: seedNamed('mine two') }, { id: 'second' }),
]);
const NAMES = ['Nightingale', 'Woodpecker', 'Kingfisher'] as const;

let server: TestServer;
const place: Parameters<typeof memoryStore>[0] = new Map();
beforeEach(async () => {
  place?.clear();
  server = await startServer({ seed: 'class mine', store: memoryStore(place) });
  onTestFinished(() => server.stop());
});

function mine(method: 'GET' | 'DELETE', { code }: Pick<Teacher, 'code'>, secret?: string): Promise<Response> {
  const headers = secret === undefined ? {} : { authorization: `Bearer ${secret}` };
  return fetch(`${server.url}${classMinePath(code)}`, { method, headers });
}

/** Three pupils who have all passed once, the first with an aim named before it. */
async function halfWay(form: 'alone' | 'guided' = 'alone') {
  const teacher = await openClass(server, { ...DRILL, form }, { names: true });
  const { pupils, peers } = await joinAll(server, teacher.code, NAMES);
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  const aims = { step: 'first-right', families: ['runs'] };
  await post(`${server.url}${classPath(teacher.code, 'aims')}`, aims, pupils[0]!.classSecret);
  for (const [nth, peer] of peers.entries()) {
    await peer.choose(anyAnswer(ownView(peer), stream('mine', `pupil ${nth}`)));
    await peer.untilTable(() => ownView(peer).record.steps.length === 1, 'the pass');
  }
  return { teacher, pupils, peers };
}

test('a pupil reads the own name, aims and choices, oldest first, and nothing of anybody else', async () => {
  const { teacher, pupils, peers } = await halfWay();
  const response = await mine('GET', teacher, pupils[0]!.classSecret);
  const text = await response.text();
  const { kept }: { kept: { at: number; what: string; name?: string; tiles?: string[] }[] } =
    JSON.parse(text);
  expect(kept.map(({ what }) => what)).toEqual(
    expect.arrayContaining(['joined the class', 'sat down', 'named aims', 'passed']),
  );
  expect(kept.map(({ at }) => at)).toEqual(kept.map(({ at }) => at).toSorted((a, b) => a - b));
  const step = ownView(peers[0]!).record.steps[0]!;
  const passed = kept.find(({ what }) => what === 'passed');
  expect(step.kind === 'move' && [...step.gave].sort()).toEqual([...passed!.tiles!].sort());
  for (const foreign of ['Woodpecker', 'Kingfisher', pupils[1]!.code, keyOf(pupils[0]!.secret)]) {
    expect(text).not.toContain(foreign);
  }
});

test('nobody else reads or deletes it: no secret, another class’s pupil, a wrong code', async () => {
  const { teacher } = await halfWay();
  const other = await halfWay();
  for (const method of ['GET', 'DELETE'] as const) {
    expect((await mine(method, teacher)).status).toBe(403);
    expect((await mine(method, teacher, other.pupils[0]!.classSecret)).status).toBe(403);
    expect((await mine(method, { code: 'ZZZZZZZZ' }, other.pupils[0]!.classSecret)).status).toBe(404);
  }
  expect((await deskOf(server, teacher)).players).toHaveLength(3);
});

test('who asks to be forgotten is: no name, no hash, no way back in; the class and a new process go on', async () => {
  const { teacher, pupils, peers } = await halfWay();
  const [, gone] = pupils;
  expect((await mine('DELETE', teacher, gone!.classSecret)).status).toBe(204);
  const logs = await Promise.all(
    [teacher.code, ...pupils.map(({ code }) => code)].map((code) => server.store.load(code)),
  );
  const text = JSON.stringify(logs);
  for (const forgotten of ['Woodpecker', keyOf(gone!.secret), keyOf(gone!.classSecret)]) {
    expect(text).not.toContain(forgotten);
  }
  expect(text).toContain('Kingfisher');
  expect((await mine('GET', teacher, gone!.classSecret)).status).toBe(403);
  expect((await post(`${server.url}${ticketPath(gone!.code)}`, {}, gone!.secret)).status).toBe(404);
  expect((await deskOf(server, teacher)).players.map(({ name }) => name)).toEqual([
    'Nightingale',
    'Kingfisher',
  ]);
  expect((await reportOf(server, teacher)).players!.map(({ name }) => name)).toEqual([
    'Nightingale',
    'Kingfisher',
  ]);

  await playOn(peers[0]!, 'to the close');
  await act(server, teacher, { kind: 'deal-next' });
  await peers[0]!.untilTable(({ round }) => round === 2, 'the next deal');
  const before = await deskOf(server, teacher);
  await server.stop();
  server = await startServer({ seed: 'class mine again', store: memoryStore(place) });
  onTestFinished(() => server.stop());
  await sitDown(server, pupils[0]!);
  const after = await deskOf(server, teacher);
  expect(after.players.map(({ id, name, deal }) => [id, name, deal])).toEqual(
    before.players.map(({ id, name, deal }) => [id, name, deal]),
  );
});

test('a class that plays one line does not wait for who left: a bot chooses there', async () => {
  const { teacher, pupils, peers } = await halfWay('guided');
  const { guidedDeal } = await deskOf(server, teacher);
  const { choice } = guidedDeal!.chosen[0]!;
  await act(server, teacher, { kind: 'advance', stepIndex: 0, choice });
  await mine('DELETE', teacher, pupils[1]!.classSecret);
  for (const peer of [peers[0]!, peers[2]!]) {
    await peer.untilTable(() => isAsked(peer), 'the next step');
    await peer.choose(anyAnswer(ownView(peer), stream('mine', 'on')));
    await peer.untilTable(({ led }) => led?.held === true, 'the hold');
  }
  expect((await deskOf(server, teacher)).guidedDeal).toMatchObject({ place: 1, waiting: 0 });
});

test('what is left can be forgotten after the class has ended, too', async () => {
  const { teacher, pupils } = await halfWay();
  await act(server, teacher, { kind: 'end' });
  expect((await mine('DELETE', teacher, pupils[0]!.classSecret)).status).toBe(204);
  expect(JSON.stringify(await server.store.load(teacher.code))).not.toContain('Nightingale');
});

test('the teacher reads what is kept of the class’s opening, and takes the class and all its tables away', async () => {
  const { teacher, pupils } = await halfWay();
  const { kept } = await (await mine('GET', teacher, teacher.secret)).json();
  expect(kept).toEqual([
    { at: kept[0].at, what: 'opened the class', drill: DRILL, terms: expect.anything() },
  ]);
  expect((await mine('DELETE', teacher, teacher.secret)).status).toBe(204);
  expect(await server.store.count()).toBe(0);
  expect((await page(server, teacher, 'desk')).status).toBe(404);
  expect((await mine('GET', teacher, pupils[0]!.classSecret)).status).toBe(404);
  expect((await fetch(`${server.url}${classPath(teacher.code)}`)).status).toBe(404);
});
