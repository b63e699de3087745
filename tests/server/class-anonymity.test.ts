// Where the class was promised anonymous choices, no page of the teacher shows a choice that would show who made it.
import { expect, onTestFinished, test } from 'vitest';
import { termsSentences } from '../../client/class/player/strings.ts';
import { memoryStore } from '../../server/store/memory.ts';
import type { ClassTerms } from '../../shared-engine/protocol/class.ts';
import { classPersonalDataPath } from '../../shared-engine/protocol/paths.ts';
import { act, bigScreenOf, dashboardOf, joinAll, joinClass, openClass, reportOf } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { isAsked, ownView, playOn } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const CHOICE = { seat: 0, step: 'first-right', kind: 'pass' } as const;

/** Players at the first pass of a class with these terms; `choose` says which three tiles each of them passes. */
async function atFirstPass(
  names: readonly string[],
  form: 'alone' | 'guided',
  terms: Partial<ClassTerms> = {},
  place: Parameters<typeof memoryStore>[0] = new Map(),
) {
  const at = await startServer({ seed: 'discretion', store: memoryStore(place) });
  onTestFinished(() => at.stop());
  const drill = { ...drillOf([dealOf({ kind: 'random', seed: seedNamed('discreet') })]), form };
  const teacher = await openClass(at, drill, terms);
  const { players, peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  await act(at, teacher, { kind: 'show', shown: { ...CHOICE, revealed: false } });
  const choose = async (player: number, from: number) => {
    const peer = peers[player]!;
    const tiles = ownView(peer)
      .rack.filter((face) => face !== 'joker')
      .slice(from, from + 3);
    expect(await peer.choose({ kind: 'pass', step: 'first-right', tiles, blind: 0 })).toMatchObject({
      kind: 'ack',
    });
    await peer.untilTable(() => ownView(peer).record.steps.length === 1, 'the pass');
  };
  return { at, teacher, players, peers, choose };
}

test('AN1 with three players one glance at the report tells nobody’s pass, whoever has chosen', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'alone');
  const nobody = await reportOf(at, teacher);
  for (const player of [0, 1, 2]) {
    await choose(player, player * 3);
    const { deals } = await reportOf(at, teacher);
    expect(deals).toEqual(nobody.deals);
  }
});

const SEVEN = ['Ines', 'Tomas', 'Wilma', 'Odo', 'Runa', 'Pelle', 'Mira'];

test('AN4 a step is told when all have chosen: choices of three players or more, and the others as one number', async () => {
  const { at, teacher, choose } = await atFirstPass(SEVEN, 'alone');
  for (const [player, from] of [0, 0, 0, 0, 2, 4, 6].entries()) {
    expect((await reportOf(at, teacher)).deals[0]!.steps).toEqual([]);
    await choose(player, from);
  }
  const [first, ...others] = (await reportOf(at, teacher)).deals[0]!.steps;
  expect([first!.choices.map(({ count }) => count), first!.hidden, first!.players]).toEqual([[4], 3, 7]);
  expect(others).toEqual([]);
});

test('AN3 a reveal counts those who have chosen by then; later choices, leaving and a restart change nothing', async () => {
  const place: Parameters<typeof memoryStore>[0] = new Map();
  const first = await atFirstPass(SEVEN, 'alone', {}, place);
  const { at, teacher, choose, players } = first;
  const shown = { ...CHOICE, revealed: true };
  for (let player = 0; player < 5; player++) await choose(player, player < 3 ? 0 : 4);
  const early = await act(at, teacher, { kind: 'show', shown });
  expect([early.status, await early.json()]).toMatchObject([409, { code: 'too-few-chosen' }]);
  await choose(5, 4);
  expect((await act(at, teacher, { kind: 'show', shown })).status).toBe(200);
  const { spread } = await bigScreenOf(at, teacher);
  expect(spread!.choices.map(({ count }) => count)).toEqual([3, 3]);
  const { deals } = await reportOf(at, teacher);
  await choose(6, 0);
  const headers = { authorization: `Bearer ${players[0]!.classSecret}` };
  await fetch(`${at.url}${classPersonalDataPath(teacher.code)}`, { method: 'DELETE', headers });
  await joinClass(at, teacher.code, 'Late');
  expect([(await bigScreenOf(at, teacher)).spread, (await reportOf(at, teacher)).deals]).toEqual([
    spread,
    deals,
  ]);
  await at.stop();
  const again = await startServer({ seed: 'discretion again', store: memoryStore(place) });
  onTestFinished(() => again.stop());
  expect([(await bigScreenOf(again, teacher)).spread, (await reportOf(again, teacher)).deals]).toEqual([
    spread,
    deals,
  ]);
});

test('AN2 five players are never counted, however alike they choose, and the big screen says so', async () => {
  const { at, teacher, choose } = await atFirstPass(SEVEN.slice(0, 5), 'alone');
  for (let player = 0; player < 5; player++) await choose(player, player < 3 ? 0 : 4);
  await act(at, teacher, { kind: 'show', shown: { ...CHOICE, revealed: true } });
  const { spread, rack } = await bigScreenOf(at, teacher);
  expect(spread).toMatchObject({ withheld: true, players: 0, choices: [] });
  expect(rack).toHaveLength(13);
  expect((await reportOf(at, teacher)).deals[0]!.steps).toEqual([]);
});

test('AN6 in a deal played alone no rack is shown but the one dealt', async () => {
  const { at, teacher, choose } = await atFirstPass(SEVEN, 'alone');
  for (let player = 0; player < 7; player++) await choose(player, 0);
  await act(at, teacher, { kind: 'show', shown: { ...CHOICE, step: 'first-across', revealed: false } });
  expect((await bigScreenOf(at, teacher)).rack).toBeNull();
});

test('AN7 after the vote a player is in the same place for the teacher, whatever the vote was, until all have finished', async () => {
  const { at, teacher, peers } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'alone');
  const places = async () => (await dashboardOf(at, teacher)).players.map((one) => one.at);
  for (const peer of peers.slice(0, 2)) {
    await playOn(peer, 'to the vote', ({ stage }) => stage.phase === 'voting');
  }
  expect(await places()).toEqual(['vote', 'vote', 'first-right']);
  await playOn(peers[0]!, 'to the close');
  await peers[1]!.choose({ kind: 'vote', step: 'vote', go: true });
  await peers[1]!.untilTable(() => ownView(peers[1]!).stage.phase !== 'voting', 'the vote');
  expect(await places()).toEqual(['after-vote', 'after-vote', 'first-right']);
  await act(at, teacher, { kind: 'show', shown: { ...CHOICE, step: 'second-left', revealed: false } });
  expect((await bigScreenOf(at, teacher)).answered).toBeNull();
  await playOn(peers[1]!, 'to the close');
  await playOn(peers[2]!, 'to the close');
  expect(await places()).toEqual(['closed', 'closed', 'closed']);
});

test('AN5 a guided deal offers the teacher what three or more chose, once all have, and any pass of the teacher’s own', async () => {
  const { at, teacher, choose } = await atFirstPass(SEVEN, 'guided');
  for (let player = 0; player < 6; player++) await choose(player, player < 3 ? 0 : 4);
  expect((await dashboardOf(at, teacher)).guidedDeal).toMatchObject({ waiting: 1, chosen: [] });
  await choose(6, 7);
  const { guidedDeal } = await dashboardOf(at, teacher);
  expect([guidedDeal!.waiting, guidedDeal!.chosen.map(({ players }) => players)]).toEqual([0, [3]]);
  const tiles = guidedDeal!.rack.filter((face) => face !== 'joker').slice(-3);
  const choice = { kind: 'pass', step: 'first-right', tiles, blind: 0 } as const;
  expect((await act(at, teacher, { kind: 'advance', stepIndex: 0, choice })).status).toBe(200);
  const [step] = (await reportOf(at, teacher)).deals[0]!.steps;
  expect([...(step!.advancedWith as readonly string[])].sort()).toEqual([...tiles].sort());
});

test.each([
  [
    { names: false, racks: false },
    { seen: false, single: false, named: false },
  ],
  [
    { names: false, racks: true },
    { seen: true, single: true, named: false },
  ],
  [
    { names: true, racks: false },
    { seen: false, single: true, named: true },
  ],
  [
    { names: true, racks: true },
    { seen: true, single: true, named: true },
  ],
] as const)('AN8 with %j the teacher sees %j, and that is what players are told', async (terms, sees) => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'alone', terms);
  await choose(0, 0);
  const [first] = (await dashboardOf(at, teacher)).players;
  const report = await reportOf(at, teacher);
  const single = report.deals[0]!.steps.some(({ choices }) => choices.some(({ count }) => count === 1));
  expect({ seen: first!.rack !== null, single, named: report.players !== null }).toEqual(sees);
  expect(report.anonymous).toBe(!single);
  const told = termsSentences({ deadline: null, cardClosed: false, ...terms }).join(' ');
  expect(told.includes('Your teacher can see your rack')).toBe(sees.seen);
  expect(told.includes('Your teacher cannot see your rack')).toBe(!sees.seen);
  expect(told.includes('report names you')).toBe(sees.named);
  expect(told.includes('shows every choice, even one that only you made')).toBe(sees.single);
  expect(told.includes('three or more players')).toBe(!sees.single);
  expect(told.includes('has not joined as a player')).toBe(!sees.single);
});

test('a bot that chose for a player is not counted among the players who chose', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'guided', { names: true });
  await choose(0, 0);
  await choose(1, 0);
  await act(at, teacher, { kind: 'stand-in', player: 2, on: true });
  await expect.poll(async () => (await dashboardOf(at, teacher)).guidedDeal!.waiting).toBe(0);
  const { guidedDeal } = await dashboardOf(at, teacher);
  expect(guidedDeal!.chosen.reduce((sum, { players }) => sum + players, 0)).toBe(2);
});
