// Personal data in a class: shown to its player alone, deleted on demand; the teacher may delete the whole class.
import { beforeEach, expect, onTestFinished, test } from 'vitest';
import { hashSecret } from '../../server/secrets.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { classPath, classPersonalDataPath, ticketPath } from '../../shared-engine/protocol/paths.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { act, dashboardOf, joinAll, openClass, page, reportOf, type Teacher } from '../kit/class-room.ts';
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
  server = await startServer({ seed: 'class personal data', store: memoryStore(place) });
  onTestFinished(() => server.stop());
});

function personalData(
  method: 'GET' | 'DELETE',
  { code }: Pick<Teacher, 'code'>,
  secret?: string,
): Promise<Response> {
  const headers = secret === undefined ? {} : { authorization: `Bearer ${secret}` };
  return fetch(`${server.url}${classPersonalDataPath(code)}`, { method, headers });
}

/** Three players who have each passed once; the first named an aim before it. */
async function halfWay(form: 'alone' | 'guided' = 'alone') {
  const teacher = await openClass(server, { ...DRILL, form }, { names: true });
  const { players, peers } = await joinAll(server, teacher.code, NAMES);
  await act(server, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  const aims = { step: 'first-right', sections: ['stairs'] };
  await post(`${server.url}${classPath(teacher.code, 'aims')}`, aims, players[0]!.classSecret);
  for (const [nth, peer] of peers.entries()) {
    await peer.choose(anyAnswer(ownView(peer), stream('mine', `player ${nth}`)));
    await peer.untilTable(() => ownView(peer).record.steps.length === 1, 'the pass');
  }
  return { teacher, players, peers };
}

test('a player reads the own name, aims and choices, oldest first, and nothing about anybody else', async () => {
  const { teacher, players, peers } = await halfWay();
  const response = await personalData('GET', teacher, players[0]!.classSecret);
  const text = await response.text();
  const { entries }: { entries: { at: number; what: string; name?: string; tiles?: string[] }[] } =
    JSON.parse(text);
  expect(entries.map(({ what }) => what)).toEqual(
    expect.arrayContaining(['joined the class', 'sat down', 'named aims', 'passed']),
  );
  expect(entries.map(({ at }) => at)).toEqual(entries.map(({ at }) => at).toSorted((a, b) => a - b));
  const step = ownView(peers[0]!).record.steps[0]!;
  const passed = entries.find(({ what }) => what === 'passed');
  expect(step.kind === 'move' && [...step.gave].sort()).toEqual([...passed!.tiles!].sort());
  for (const foreign of ['Woodpecker', 'Kingfisher', players[1]!.code, hashSecret(players[0]!.secret)]) {
    expect(text).not.toContain(foreign);
  }
});

test('personal data is closed to a request without a secret, with a secret of another class, or with a wrong code', async () => {
  const { teacher } = await halfWay();
  const other = await halfWay();
  for (const method of ['GET', 'DELETE'] as const) {
    expect((await personalData(method, teacher)).status).toBe(403);
    expect((await personalData(method, teacher, other.players[0]!.classSecret)).status).toBe(403);
    expect((await personalData(method, { code: 'ZZZZZZZZ' }, other.players[0]!.classSecret)).status).toBe(
      404,
    );
  }
  expect((await dashboardOf(server, teacher)).players).toHaveLength(3);
});

test('deleting removes a player’s name and hash and the way back in, and the class continues, also after a restart', async () => {
  const { teacher, players, peers } = await halfWay();
  const [, gone] = players;
  expect((await personalData('DELETE', teacher, gone!.classSecret)).status).toBe(204);
  const logs = await Promise.all(
    [teacher.code, ...players.map(({ code }) => code)].map((code) => server.store.history(code)),
  );
  const text = JSON.stringify(logs);
  for (const forgotten of ['Woodpecker', hashSecret(gone!.secret), hashSecret(gone!.classSecret)]) {
    expect(text).not.toContain(forgotten);
  }
  expect(text).toContain('Kingfisher');
  expect((await personalData('GET', teacher, gone!.classSecret)).status).toBe(403);
  expect((await post(`${server.url}${ticketPath(gone!.code)}`, {}, gone!.secret)).status).toBe(404);
  expect((await dashboardOf(server, teacher)).players.map(({ name }) => name)).toEqual([
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
  const before = await dashboardOf(server, teacher);
  await server.stop();
  server = await startServer({ seed: 'class personal data again', store: memoryStore(place) });
  onTestFinished(() => server.stop());
  await sitDown(server, players[0]!);
  const after = await dashboardOf(server, teacher);
  expect(after.players.map(({ id, name, deal }) => [id, name, deal])).toEqual(
    before.players.map(({ id, name, deal }) => [id, name, deal]),
  );
});

test('a guided deal does not wait for a player who left: a bot chooses there', async () => {
  const { teacher, players, peers } = await halfWay('guided');
  const { guidedDeal } = await dashboardOf(server, teacher);
  const { choice } = guidedDeal!.chosen[0]!;
  await act(server, teacher, { kind: 'advance', stepIndex: 0, choice });
  await personalData('DELETE', teacher, players[1]!.classSecret);
  for (const peer of [peers[0]!, peers[2]!]) {
    await peer.untilTable(() => isAsked(peer), 'the next step');
    await peer.choose(anyAnswer(ownView(peer), stream('mine', 'on')));
    await peer.untilTable(({ controls }) => controls?.held === true, 'the hold');
  }
  expect((await dashboardOf(server, teacher)).guidedDeal).toMatchObject({ stepIndex: 1, waiting: 0 });
});

test('personal data can be deleted after the class has ended, too', async () => {
  const { teacher, players } = await halfWay();
  await act(server, teacher, { kind: 'end' });
  expect((await personalData('DELETE', teacher, players[0]!.classSecret)).status).toBe(204);
  expect(JSON.stringify(await server.store.history(teacher.code))).not.toContain('Nightingale');
});

test('the teacher reads what is stored about opening the class, and deletes the class with all its tables', async () => {
  const { teacher, players } = await halfWay();
  const { entries } = await (await personalData('GET', teacher, teacher.secret)).json();
  expect(entries).toEqual([
    { at: entries[0].at, what: 'opened the class', drill: DRILL, terms: expect.anything() },
  ]);
  expect((await personalData('DELETE', teacher, teacher.secret)).status).toBe(204);
  expect(await server.store.count()).toBe(0);
  expect((await page(server, teacher, 'dashboard')).status).toBe(404);
  expect((await personalData('GET', teacher, players[0]!.classSecret)).status).toBe(404);
  expect((await fetch(`${server.url}${classPath(teacher.code)}`)).status).toBe(404);
});

test('who leads the class and plays in it deletes the own data twice, and the class stays until it alone is meant', async () => {
  const { teacher, players } = await halfWay();
  const cookie = `teacher=${teacher.secret}; player=${players[0]!.classSecret}`;
  const own = classPersonalDataPath(teacher.code);
  const ask = async (method: 'GET' | 'DELETE', path: string, cookies: string) => {
    const response = await fetch(`${server.url}${path}`, { method, headers: { cookie: cookies } });
    return [response.status, response.headers.getSetCookie().some((one) => one.startsWith('player=;'))];
  };
  expect(await ask('DELETE', own, cookie)).toEqual([204, true]);
  // A second tap, at an older page too, and a second tab that has lost the player's cookie by now.
  expect(await ask('DELETE', own, cookie)).toEqual([403, false]);
  expect(await ask('DELETE', `${own}/player`, cookie)).toEqual([204, true]);
  expect(await ask('DELETE', `${own}/player`, `teacher=${teacher.secret}`)).toEqual([204, true]);
  expect(await ask('DELETE', `${own}/player`, 'screen=nobody')).toEqual([403, false]);
  expect((await dashboardOf(server, teacher)).players.map(({ name }) => name)).toEqual(NAMES.slice(1));
  // Whoever is shown what is the teacher's may then delete the class.
  expect(await ask('GET', own, cookie)).toEqual([200, true]);
  expect(await ask('DELETE', own, `teacher=${teacher.secret}`)).toEqual([204, true]);
  expect((await page(server, teacher, 'dashboard')).status).toBe(404);
});
