// Where the class was told that nobody is told from the others, no page of the teacher's shows what one pupil alone chose.
import { expect, onTestFinished, test } from 'vitest';
import { act, deskOf, joinAll, openClass, reportOf, wallOf } from '../kit/class-room.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { isAsked, ownView } from '../kit/http-client.ts';
import { seedNamed } from '../kit/rounds.ts';
import { startServer } from '../kit/server.ts';

const CHOICE = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;

/** Pupils at the first pass of a class that plays by these terms; each is told which three tiles of the rack to pass. */
async function atFirstPass(names: readonly string[], form: 'alone' | 'guided', named = false) {
  const at = await startServer({ seed: 'discretion' });
  onTestFinished(() => at.stop());
  const drill = { ...drillOf([dealOf({ kind: 'random', seed: seedNamed('discreet') })]), form };
  const teacher = await openClass(at, drill, { names: named });
  const { peers } = await joinAll(at, teacher.code, names);
  await act(at, teacher, { kind: 'deal-next' });
  await Promise.all(peers.map((peer) => peer.untilTable(() => peer.table.view !== null && isAsked(peer))));
  await act(at, teacher, { kind: 'show', choice: CHOICE });
  const choose = async (pupil: number, from: number) => {
    const peer = peers[pupil]!;
    const tiles = ownView(peer)
      .rack.filter((face) => face !== 'joker')
      .slice(from, from + 3);
    expect(await peer.choose({ kind: 'seal', step: 'first-right', tiles, blind: 0 })).toMatchObject({
      kind: 'ack',
    });
    await peer.untilTable(() => ownView(peer).record.steps.length === 1, 'the pass');
  };
  return { at, teacher, choose };
}

test('the wall shows choices when all have chosen, and a single one where it is not the only one', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma', 'Odo'], 'alone');
  const shown = async () => {
    const { spread } = await wallOf(at, teacher);
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

test('the report leaves a single choice out where it is the only one, and tells it where the class was told so', async () => {
  for (const named of [false, true]) {
    const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'alone', named);
    for (const [pupil, from] of [0, 0, 5].entries()) await choose(pupil, from);
    const [first] = (await reportOf(at, teacher)).deals[0]!.steps;
    expect(first!.choices.map(({ count }) => count)).toEqual(named ? [2, 1] : [2]);
    expect(first!.hidden).toBe(named ? undefined : 1);
    expect(first!.loss === null).toBe(!named);
  }
});

test('the line offers the teacher what several chose, once all have, and any pass of the teacher’s own', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'guided');
  await choose(0, 0);
  await choose(1, 0);
  expect((await deskOf(at, teacher)).guidedDeal).toMatchObject({ waiting: 1, chosen: [] });
  await choose(2, 5);
  const { guidedDeal } = await deskOf(at, teacher);
  expect([guidedDeal!.waiting, guidedDeal!.chosen.map(({ players }) => players)]).toEqual([0, [2]]);
  const tiles = guidedDeal!.rack.filter((face) => face !== 'joker').slice(-3);
  const choice = { kind: 'seal', step: 'first-right', tiles, blind: 0 } as const;
  expect((await act(at, teacher, { kind: 'advance', stepIndex: 0, choice })).status).toBe(200);
});

test('a bot that chose for a pupil is not counted among those who chose', async () => {
  const { at, teacher, choose } = await atFirstPass(['Ines', 'Tomas', 'Wilma'], 'guided', true);
  await choose(0, 0);
  await choose(1, 0);
  await act(at, teacher, { kind: 'stand-in', pupil: 2, on: true });
  await expect.poll(async () => (await deskOf(at, teacher)).guidedDeal!.waiting).toBe(0);
  const { guidedDeal } = await deskOf(at, teacher);
  expect(guidedDeal!.chosen.reduce((sum, { players }) => sum + players, 0)).toBe(2);
});
