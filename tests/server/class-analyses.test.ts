// One currency, one truth: costs of a class come from deep analyses alone, are stored, and are the same after a restart.
import { expect, onTestFinished, test } from 'vitest';
import { memoryStore } from '../../server/store/memory.ts';
import type { Drill } from '../../shared-engine/drill/format.ts';
import type { ClassTerms } from '../../shared-engine/protocol/class.ts';
import { act, bigScreenOf, joinAll, openClass, reportOf, type Teacher } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { analysisByDecision, answering, fakeAnalyzer } from '../kit/fake-analysis.ts';
import { isAsked, ownView } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer, type TestServer, type TestServerOptions } from '../kit/server.ts';

const FIRST = { seat: 0, step: 'first-right', kind: 'pass' } as const;
const REVEAL = { kind: 'show', shown: { ...FIRST, revealed: true } } as const;

async function started(options: TestServerOptions): Promise<TestServer> {
  const at = await startServer(options);
  onTestFinished(() => at.stop());
  return at;
}

/** A class at its first pass; `choose` passes three tiles of the player's rack from this place on. */
async function atFirstPass(at: TestServer, players: number, terms: Partial<ClassTerms>) {
  const drill: Drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('one truth') })]);
  const teacher = await openClass(at, drill, terms);
  const names = Array.from({ length: players }, (_, n) => `Player ${n + 1}`);
  const { peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  const choose = async (player: number, from: number) => {
    const peer = peers[player]!;
    const tiles = ownView(peer)
      .rack.filter((face) => face !== 'joker')
      .slice(from, from + 3);
    await peer.choose({ kind: 'pass', step: 'first-right', tiles, blind: 0 });
    await peer.untilTable(() => ownView(peer).record.steps.length === 1, 'the pass');
  };
  return { teacher, peers, choose };
}

const firstStep = async (at: TestServer, teacher: Teacher) =>
  (await reportOf(at, teacher)).deals[0]!.steps.find(({ kind }) => kind === 'pass')!;

test('CA1 CA2 CA3 before their analyses choices are shown as being looked at, on big screen and report alike; then both tell one cost', async () => {
  const fake = fakeAnalyzer();
  const at = await started({ seed: 'one truth', analyzer: fake.analyzer });
  const { teacher, choose } = await atFirstPass(at, 3, { names: true });
  for (const player of [0, 1, 2]) await choose(player, player < 2 ? 0 : 5);
  await act(at, teacher, REVEAL);
  const waiting = (await bigScreenOf(at, teacher)).spread!;
  expect(waiting).toMatchObject({ players: 3, pending: 3, winsLost: null, best: null });
  expect(waiting.choices.map(({ count, winsLost }) => [count, winsLost])).toEqual([
    [2, null],
    [1, null],
  ]);
  expect(await firstStep(at, teacher)).toEqual(waiting);
  const [first, second] = fake.asked;
  expect(fake.asked).toHaveLength(2);
  expect(fake.asked.map(({ rank }) => rank())).toEqual(['interactive', 'interactive']);
  first!.answer(analysisByDecision(first!));
  await expect.poll(() => second!.isOver()).toBe(false);
  expect((await bigScreenOf(at, teacher)).spread!.choices[0]!.winsLost).toBeNull();
  second!.answer(analysisByDecision(second!));
  await expect.poll(async () => (await bigScreenOf(at, teacher)).spread!.pending).toBe(0);
  const told = (await bigScreenOf(at, teacher)).spread!;
  expect(told.choices.every(({ winsLost }) => winsLost !== null)).toBe(true);
  expect(told.best!.why).toMatch(/[.]$/);
  expect(await firstStep(at, teacher)).toEqual(told);
});

test('WK9 what a page analyzes itself goes last in a class too, until its step is revealed', async () => {
  const fake = fakeAnalyzer();
  const at = await started({ seed: 'one truth', analyzer: fake.analyzer });
  const { teacher, peers, choose } = await atFirstPass(at, 2, { names: true });
  const [first] = peers;
  const id = first!.newId();
  first!.send({ kind: 'analyzed-by', id, round: first!.table.round, by: 'page' });
  await first!.answerTo(id);
  await choose(0, 0);
  await choose(1, 5);
  await expect.poll(() => fake.asked.map(({ rank }) => rank())).toEqual(['spare', 'live']);
  await act(at, teacher, REVEAL);
  expect(fake.asked.map(({ rank }) => rank())).toEqual(['interactive', 'interactive']);
  for (const one of fake.asked) one.answer(analysisByDecision(one));
  await expect.poll(async () => (await firstStep(at, teacher)).pending).toBe(0);
});

test('CA2 a report is the same after a restart, whatever an analyzer would say by then, and asks for what is missing', async () => {
  const place: Parameters<typeof memoryStore>[0] = new Map();
  const asked: string[] = [];
  // One choice could not be analyzed before the restart.
  const one = answering((request) => {
    asked.push(request.decisionId);
    return request.decisionId === asked[0] ? analysisByDecision(request) : null;
  });
  const before = await startServer({ seed: 'one truth', analyzer: one, store: memoryStore(place) });
  const { teacher, choose } = await atFirstPass(before, 2, { names: true });
  await choose(0, 0);
  await choose(1, 5);
  await expect.poll(async () => (await firstStep(before, teacher)).pending).toBe(1);
  await before.stop();
  const again: string[] = [];
  const other = answering((request) => {
    again.push(request.decisionId);
    return analysisByDecision(request);
  });
  const after = await started({ seed: 'up', analyzer: other, store: memoryStore(place) });
  await expect.poll(async () => (await firstStep(after, teacher)).pending).toBe(0);
  expect(again).not.toContain(asked[0]);
  const report = await reportOf(after, teacher);
  await after.stop();
  const silent = await started({
    seed: 'up again',
    analyzer: fakeAnalyzer().analyzer,
    store: memoryStore(place),
  });
  expect(await reportOf(silent, teacher)).toEqual(report);
});

test('AN5 in an anonymous class only what was told is analyzed, when it is frozen, and its costs are told together', async () => {
  const fake = fakeAnalyzer();
  const at = await started({ seed: 'one truth', analyzer: fake.analyzer });
  const { teacher, choose } = await atFirstPass(at, 7, {});
  for (const player of [0, 1, 2, 3, 4, 5]) await choose(player, player < 4 ? 0 : 5);
  // What is known from the players' own reviews is not used.
  const byPlayers = fake.asked.length;
  for (const one of fake.asked) one.answer(analysisByDecision(one));
  expect((await reportOf(at, teacher)).deals[0]!.steps).toEqual([]);
  await choose(6, 5);
  const waiting = await firstStep(at, teacher);
  expect(waiting).toMatchObject({ players: 7, pending: 7, best: null });
  expect(waiting.choices.map(({ count }) => count)).toEqual([4, 3]);
  const [one, two, ...more] = fake.asked.slice(byPlayers);
  expect([one?.decisionId !== two?.decisionId, more]).toEqual([true, []]);
  one!.answer(analysisByDecision(one!));
  expect((await firstStep(at, teacher)).pending).toBe(7);
  two!.answer(analysisByDecision(two!));
  await expect.poll(async () => (await firstStep(at, teacher)).pending).toBe(0);
  expect((await firstStep(at, teacher)).choices.every(({ winsLost }) => winsLost !== null)).toBe(true);
});
