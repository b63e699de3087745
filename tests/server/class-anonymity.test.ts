// Where the class was promised anonymous choices, no page of the teacher shows a choice that would show who made it.
import { expect, onTestFinished, test } from 'vitest';
import { act, bigScreenOf, dashboardOf, joinAll, openClass, reportOf } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { isAsked, ownView } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const CHOICE = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;

/** Players at the first pass of a class with these terms; `choose` says which three tiles each of them passes. */
async function atFirstPass(names: readonly string[], form: 'alone' | 'guided', named = false) {
  const at = await startServer({ seed: 'discretion' });
  onTestFinished(() => at.stop());
  const drill = { ...drillOf([dealOf({ kind: 'random', seed: seedNamed('discreet') })]), form };
  const teacher = await openClass(at, drill, { names: named });
  const { peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  await act(at, teacher, { kind: 'show', shown: CHOICE });
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
  return { at, teacher, choose };
}

test('the big screen shows choices when all have chosen, and choices of single players if there are two of them', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma', 'Odo'], 'alone');
  const shown = async () => {
    const { spread } = await bigScreenOf(at, teacher);
    return [spread?.choices.map(({ count }) => count), spread?.hidden];
  };
  await choose(0, 0);
  expect(await shown()).toEqual([[], 1]);
  await choose(1, 0);
  expect(await shown()).toEqual([[], 2]);
  await choose(2, 4);
  expect(await shown()).toEqual([[], 3]);
  await choose(3, 6);
  expect(await shown()).toEqual([[2, 1, 1], undefined]);
  const [deal] = (await reportOf(at, teacher)).deals;
  expect(deal!.steps[0]!.choices.map(({ count }) => count)).toEqual([2, 1, 1]);
});

test('the report leaves out the only choice of a single player, and shows it where the class was told so', async () => {
  for (const named of [false, true]) {
    const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'alone', named);
    for (const [player, from] of [0, 0, 5].entries()) await choose(player, from);
    const [first] = (await reportOf(at, teacher)).deals[0]!.steps;
    expect(first!.choices.map(({ count }) => count)).toEqual(named ? [2, 1] : [2]);
    expect(first!.hidden).toBe(named ? undefined : 1);
    expect(first!.loss === null).toBe(!named);
  }
});

test('a guided deal offers the teacher what several players chose, once all have, and any pass of the teacher’s own', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'guided');
  await choose(0, 0);
  await choose(1, 0);
  expect((await dashboardOf(at, teacher)).guidedDeal).toMatchObject({ waiting: 1, chosen: [] });
  await choose(2, 5);
  const { guidedDeal } = await dashboardOf(at, teacher);
  expect([guidedDeal!.waiting, guidedDeal!.chosen.map(({ players }) => players)]).toEqual([0, [2]]);
  const tiles = guidedDeal!.rack.filter((face) => face !== 'joker').slice(-3);
  const choice = { kind: 'pass', step: 'first-right', tiles, blind: 0 } as const;
  expect((await act(at, teacher, { kind: 'advance', stepIndex: 0, choice })).status).toBe(200);
});

test('a bot that chose for a player is not counted among the players who chose', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'guided', true);
  await choose(0, 0);
  await choose(1, 0);
  await act(at, teacher, { kind: 'stand-in', player: 2, on: true });
  await expect.poll(async () => (await dashboardOf(at, teacher)).guidedDeal!.waiting).toBe(0);
  const { guidedDeal } = await dashboardOf(at, teacher);
  expect(guidedDeal!.chosen.reduce((sum, { players }) => sum + players, 0)).toBe(2);
});
