// What friends do at their table besides passing: agree on how it plays, change places, and say a word.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { classOpenedSchema } from '../../shared-engine/protocol/class.ts';
import { classPath, personalDataPath, SAME_DEALS_PATH } from '../../shared-engine/protocol/paths.ts';
import { personalDataSchema } from '../../shared-engine/protocol/room-http.ts';
import { friendChoicesSchema } from '../../shared-engine/protocol/same-deal.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { type JoinedPlayer, joinClass } from '../kit/class-room.ts';
import { anyAnswer, deal, ownView, pass, post, sitDown, tableOfFour, watch } from '../kit/http-client.ts';
import { startServer, type TestServer } from '../kit/server.ts';
import type { Peer } from '../kit/sockets.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startServer({ seed: 'together' });
});
afterAll(() => server.stop());

test('SC5 W2 the host changes how the table plays, everybody is told, and nobody is taken to be ready for it', async () => {
  const { code, peers } = await tableOfFour(server);
  const [host, guest] = [peers[0]!, peers[1]!];
  const spectator = await watch(server, code);
  await guest.act({ kind: 'ready', ready: true });
  await host.untilTable(({ seats: [, at] }) => at.kind === 'person' && at.ready, 'readiness');
  const asked = { secondCharleston: 'none', passLog: true } as const;
  expect(await host.act({ kind: 'set-terms', terms: asked })).toMatchObject({ kind: 'ack' });
  const terms = { ...STANDARD_TERMS.friends, ...asked };
  for (const peer of [...peers, spectator]) {
    await peer.untilTable((table) => table.terms.secondCharleston === 'none', 'the new way');
    expect(peer.table.terms).toEqual(terms);
    expect(peer.table.seats[1]).toMatchObject({ ready: false });
  }
  expect(await host.act({ kind: 'set-terms', terms: { whoIsEast: 'always' } })).toMatchObject({
    code: 'east-not-in-turn',
  });
  await deal(peers);
  expect(ownView(guest).terms).toEqual(terms);
  expect(await host.act({ kind: 'set-terms', terms: {} })).toMatchObject({ code: 'round-running' });
});

test('TG1 RS1 people change places before a deal, go on over the same connection, and find the new place again', async () => {
  const { code, peers, guests } = await tableOfFour(server);
  const [host, , guest] = [peers[0]!, peers[1]!, peers[2]!];
  expect(await guest.act({ kind: 'swap-seats', seat: 0 })).toMatchObject({ code: 'not-the-host' });
  await peers[1]!.act({ kind: 'leave' });
  expect(await guest.act({ kind: 'swap-seats', seat: 1 })).toMatchObject({ kind: 'ack' });
  await guest.untilTable(({ you }) => you === 1, 'the free seat');
  expect(await host.act({ kind: 'swap-seats', seat: 3 })).toMatchObject({ kind: 'ack' });
  await host.untilTable(({ you }) => you === 3, 'the other place');
  await peers[3]!.untilTable(({ you }) => you === 0, 'the host’s place');
  const seated = [host, guest, peers[3]!];
  for (const peer of seated)
    await peer.untilTable(({ seats }) => seats[3].kind === 'person' && seats[3].host);
  expect(host.table.seats).toMatchObject([
    { name: 'Odo', host: false, present: true },
    { name: 'Wilma' },
    { kind: 'empty' },
    { name: 'Ines', host: true },
  ]);
  await deal(seated);
  expect(ownView(host).record.seat).toBe(3);
  expect(await host.act({ kind: 'swap-seats', seat: 0 })).toMatchObject({ code: 'seats-fixed' });
  const back = await sitDown(server, guests[2]!);
  await back.untilTable(({ you }) => you === 1, 'the way back');
  expect(ownView(back).rack).toEqual(ownView(guest).rack);
  // The data stored about somebody is that of the person, at both places.
  const headers = { authorization: `Bearer ${guests[2]!.secret}` };
  const response = await fetch(`${server.url}${personalDataPath(code)}`, { headers });
  const told = personalDataSchema.parse(await response.json()).entries.map(({ what }) => what);
  expect(told[0]).toBe('sat down');
  expect(told.slice(told.indexOf('changed places'))).toContain('ready');
});

test('TG2 TG3 a sentence reaches everybody until the step is over, and nobody can go on talking', async () => {
  const { code, peers } = await tableOfFour(server);
  const [host, guest] = [peers[0]!, peers[1]!];
  const spectator = await watch(server, code);
  await deal(peers);
  const words = (table: Table) => table.said ?? [];
  await host.act({ kind: 'say', phrase: 'one-moment', to: null });
  await guest.act({ kind: 'say', phrase: 'your-turn', to: 0 });
  for (const peer of [...peers, spectator])
    await peer.untilTable((table) => words(table).length === 2, 'words');
  expect(words(spectator.table)).toMatchObject([
    { seat: 0, phrase: 'one-moment', to: null },
    { seat: 1, phrase: 'your-turn', to: 0 },
  ]);
  // Nobody waits for whoever has passed, and a reminder is for somebody.
  await host.choose(anyAnswer(ownView(host), { below: () => 0 }));
  await guest.act({ kind: 'say', phrase: 'your-turn', to: 0 });
  expect(await guest.act({ kind: 'say', phrase: 'your-turn', to: null })).toMatchObject({
    code: 'bad-request',
  });
  for (let said = 0; said < 4; said++) await guest.act({ kind: 'say', phrase: 'ready', to: null });
  expect(await guest.act({ kind: 'say', phrase: 'ready', to: null })).toMatchObject({ code: 'too-often' });
  expect(words(host.table)).toHaveLength(2);
  for (const peer of peers.slice(1)) await peer.choose(anyAnswer(ownView(peer), { below: () => 0 }));
  await spectator.untilTable((table) => words(table).length === 0, 'the next step');
  await pass(server, 20_000, [...peers, spectator]);
  expect(await guest.act({ kind: 'say', phrase: 'well-passed', to: null })).toMatchObject({ kind: 'ack' });
});

function tilesOf({ step: _, ...choice }: AnswerChoice) {
  return choice;
}

test('SD1 SD2 friends hold the same tiles and read each other’s choices one step behind their own', async () => {
  const response = await post(`${server.url}${SAME_DEALS_PATH}`, { style: 'typical', card: null });
  const { code } = classOpenedSchema.parse(await response.json());
  expect(response.headers.get('set-cookie')).toBeNull();
  const [ines, tomas] = [await joinClass(server, code, 'Ines'), await joinClass(server, code, 'Tomas')];
  const [first, second] = [await sitDown(server, ines), await sitDown(server, tomas)];
  await Promise.all([first, second].map((peer) => peer.untilTable(({ round }) => round === 1, 'the deal')));
  expect(ownView(first).rack).toEqual(ownView(second).rack);
  const choices = async ({ classSecret }: JoinedPlayer) => {
    const headers = { authorization: `Bearer ${classSecret}` };
    const answer = await fetch(`${server.url}${classPath(code, 'choices')}`, { headers });
    return friendChoicesSchema.parse(await answer.json());
  };
  const before = await choices(tomas);
  expect(before).toMatchObject({ friends: ['Ines'], steps: [] });
  const passTo = async (peer: Peer, below: number, step: string) => {
    const choice = anyAnswer(ownView(peer), { below: (count) => Math.min(below, count - 1) });
    await peer.choose(choice);
    await pass(server, 10_000, [first, second]);
    await peer.untilTable(() => stepOf(ownView(peer).stage) === step, step);
    return choice;
  };
  const passed = await passTo(first, 0, 'first-across');
  await passTo(first, 0, 'first-left');
  // Nothing that Tomas can fetch has changed, not even its version.
  expect(await choices(tomas)).toEqual(before);
  await passTo(second, 1, 'first-across');
  const [step, ...more] = (await choices(tomas)).steps;
  expect(more).toEqual([]);
  expect(step).toMatchObject({
    step: 'first-right',
    others: [{ name: 'Ines', sameTiles: true, choice: tilesOf(passed) }],
  });
  // From here on they hold other tiles.
  await passTo(second, 0, 'first-left');
  expect((await choices(ines)).steps[1]?.others).toMatchObject([{ name: 'Tomas', sameTiles: false }]);
  // The deal is still there: whoever has no seat in it is told that, not that the deal was deleted.
  const outside = await fetch(`${server.url}${classPath(code, 'choices')}`);
  expect([outside.status, (await outside.json()).code]).toEqual([403, 'not-seated']);
});
