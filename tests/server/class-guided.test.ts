// A class with guided deals: all tables continue from the teacher's choice, and each player keeps the own choices.
import { expect, test } from 'vitest';
import { replayRoom } from '../../server/room/room.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { FULL_SET, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { act, bigScreenOf, dashboardOf, joinClass, reportOf } from '../kit/class-room.ts';
import { advance, chooseApart, guidedClass, guidedDealOf } from '../kit/guided-class.ts';
import { anyAnswer, isClosed, ownView, sitDown } from '../kit/http-client.ts';
import { houseKernel } from '../kit/reviews.ts';
import { eventsOf } from '../kit/room-logs.ts';
import type { Peer } from '../kit/sockets.ts';

test('L1 all tables continue from the teacher’s choice with the same tiles and close at the same time', async () => {
  const class_ = await guidedClass(['Ines', 'Tomas', 'Wilma']);
  const { peers, at, players } = class_;
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `step ${place}`);
    const guided = await guidedDealOf(class_);
    expect([guided.stepIndex, guided.waiting]).toEqual([place, 0]);
    await advance(class_, guided.chosen.at(-1)?.choice ?? null, place);
    const [first, ...others] = peers.map((peer) => ownView(peer));
    for (const view of others) {
      expect([view.rack, view.record.steps, view.stage]).toEqual([
        first!.rack,
        first!.record.steps,
        first!.stage,
      ]);
    }
  }
  expect(peers.map(isClosed)).toEqual([true, true, true]);
  for (const { code } of players) {
    const round = replayRoom((await eventsOf(at.store, code))!)!.play!.round;
    expect(round.racks.map(sizeOf)).toEqual([14, 13, 13, 13]);
    const held = round.racks.reduce((sum, rack) => sum.map((count, face) => count + rack[face]!));
    expect(held.every((count, face) => count <= FULL_SET[face]!)).toBe(true);
  }
});

test('L1 W2 W3 W4 a guided deal is played by the ways of its drill and closes where they end it', async () => {
  const ways = {
    secondCharleston: 'none',
    blindPasses: false,
    courtesy: 'none',
    cardHelp: 'none',
    passLog: true,
  } as const;
  const class_ = await guidedClass(['Ines', 'Tomas'], { ways });
  const { peers } = class_;
  const steps: (string | null)[] = [];
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `ways ${place}`);
    const guided = await guidedDealOf(class_);
    steps.push(guided.step);
    expect(guided.blindAllowed).toBe(false);
    await advance(class_, guided.chosen[0]!.choice, place);
  }
  expect(steps).toEqual(['first-right', 'first-across', 'first-left']);
  expect(peers.map(isClosed)).toEqual([true, true]);
  for (const peer of peers) expect(ownView(peer).record.terms).toMatchObject(ways);
});

test('L2 the review rates what the player chose by the tiles held then, whatever the class continued from', async () => {
  const class_ = await guidedClass(['Ines', 'Tomas']);
  const { peers } = class_;
  const own: string[][] = [[], []];
  for (let place = 0; !isClosed(peers[0]!); place++) {
    await chooseApart(class_, `own ${place}`);
    for (const [player, peer] of peers.entries()) {
      const step = ownView(peer).record.steps.at(-1)!;
      own[player]!.push(step.kind === 'move' ? step.gave.join() : '');
    }
    await advance(class_, (await guidedDealOf(class_)).chosen[0]?.choice ?? null, place);
  }
  for (const [player, peer] of peers.entries()) {
    const { record } = ownView(peer);
    const gave = record.actualSteps!.map((step) => (step?.kind === 'move' ? step.gave.join() : ''));
    expect(gave).toEqual(own[player]);
    const { review } = await peer.review();
    expect(review).toEqual(reviewRound(record, houseKernel));
    const passes = review.choices.flatMap((one) =>
      one.kind === 'pass' ? [[...one.played.tiles].sort().join()] : [],
    );
    expect(passes).toEqual(
      gave.filter((tiles) => tiles !== '').map((tiles) => tiles.split(',').sort().join()),
    );
  }
  expect((await peers[0]!.review()).review).not.toEqual((await peers[1]!.review()).review);
});

test('E1 a guided deal does not continue before all have chosen, from an illegal choice, or twice from one step', async () => {
  const class_ = await guidedClass(['Ines', 'Tomas']);
  const { at, teacher, peers } = class_;
  const refused = async (choice: AnswerChoice | null, stepIndex: number) => {
    const response = await act(at, teacher, { kind: 'advance', stepIndex, choice });
    return (await response.json()).code;
  };
  const [ines] = peers as [Peer, Peer];
  const rack = ownView(ines).rack;
  const pass = { kind: 'pass', step: 'first-right', tiles: rack.slice(0, 3), blind: 0 } as const;
  await ines.choose(pass);
  await ines.untilTable(({ controls: now }) => now?.held === true, 'the hold');
  expect(await ines.choose(anyAnswer(ownView(ines), stream('too', 'early')))).toMatchObject({ code: 'held' });
  expect(await refused(pass, 0)).toBe('not-all-chosen');
  expect(await (await act(at, teacher, { kind: 'deal-next' })).json()).toMatchObject({ code: 'deal-open' });
  await act(at, teacher, { kind: 'stand-in', player: 1, on: true });
  await peers[1]!.untilTable(({ controls: now }) => now?.held === true, 'the stand-in');
  expect(await refused({ ...pass, tiles: rack.slice(0, 2) }, 0)).toBe('wrong-count');
  expect(await refused({ ...pass, tiles: ['joker', 'joker', 'joker'] }, 0)).toBe('joker-in-pass');
  const foreign = FACES.find((face) => face !== 'joker' && !rack.includes(face))!;
  expect(await refused({ ...pass, tiles: [foreign, ...rack.slice(0, 2)] }, 0)).toBe('tile-not-held');
  expect(await refused({ ...pass, blind: 1, tiles: rack.slice(0, 2) }, 0)).toBe('blind-not-allowed');
  expect(await refused({ kind: 'ask', step: 'courtesy-ask', count: 4 }, 0)).toBe('bad-request');
  expect(await refused({ kind: 'vote', step: 'vote', go: true }, 0)).toBe('wrong-step');
  expect(await refused(null, 0)).toBe('wrong-step');
  expect((await guidedDealOf(class_)).stepIndex).toBe(0);
  await advance(class_, pass, 0);
  // Another dashboard that chose the same has chosen it too; another choice comes too late (rule TK6).
  expect(await refused({ ...pass, tiles: [...pass.tiles].reverse() }, 0)).toBeUndefined();
  const others = rack.filter((face) => face !== 'joker').slice(-3);
  expect(await refused({ ...pass, tiles: others }, 0)).toBe('already-advanced');
  const late = await act(at, teacher, { kind: 'advance', stepIndex: 0, choice: pass, dealt: 0 });
  expect((await late.json()).code).toBe('class-moved-on');
});

test('L1 a guided deal can continue from a pass that nobody made, with the bots’ choices of every table', async () => {
  const class_ = await guidedClass(['Ines']);
  const [ines] = class_.peers as [Peer];
  await chooseApart(class_, 'somebody');
  const before = ownView(ines).record.steps[0]!;
  const { rack, chosen } = await guidedDealOf(class_);
  const gave = chosen[0]!.choice.kind === 'pass' ? chosen[0]!.choice.tiles : [];
  const tiles = rack.filter((face) => face !== 'joker' && !gave.includes(face)).slice(0, 3);
  await advance(class_, { kind: 'pass', step: 'first-right', tiles, blind: 0 }, 0);
  const after = ownView(ines).record.steps[0]!;
  expect(
    before.kind === 'move' && after.kind === 'move' && [before.received, [...after.gave].sort()],
  ).toEqual([after.kind === 'move' && after.received, [...tiles].sort()]);
});

test('a late player joins a guided deal where it is now; the report counts each choice at its own step', async () => {
  const class_ = await guidedClass(['Ines', 'Tomas']);
  const { at, teacher } = class_;
  await chooseApart(class_, 'before');
  await advance(class_, (await guidedDealOf(class_)).chosen[0]!.choice, 0);
  const late = await sitDown(at, await joinClass(at, teacher.code, 'Odo'));
  await late.untilTable(
    () => late.table.view !== null && ownView(late).record.actualSteps?.length === 1,
    'the line',
  );
  expect(ownView(late).rack).toEqual(ownView(class_.peers[0]!).rack);
  const peers = [...class_.peers, late];
  await chooseApart({ peers }, 'with the late one');
  const [deal] = (await reportOf(at, teacher)).deals;
  expect(deal!.steps.map(({ step, players, stoodIn }) => [step, players, stoodIn])).toEqual([
    ['first-right', 2, 0],
    ['first-across', 3, 0],
  ]);
  const choice = { seat: 0, step: 'first-right', kind: 'pass', revealed: true } as const;
  await act(at, teacher, { kind: 'show', shown: choice });
  const bigScreen = await bigScreenOf(at, teacher);
  expect(bigScreen.answered).toBe(2);
  expect(bigScreen.spread!.choices.map(({ chosen }) => chosen)).toContainEqual(
    bigScreen.spread!.advancedWith,
  );
  expect(deal!.steps.map(({ advancedWith }) => advancedWith)).toEqual([
    bigScreen.spread!.advancedWith,
    undefined,
  ]);
  await act(at, teacher, { kind: 'show', shown: { ...choice, revealed: false } });
  expect((await bigScreenOf(at, teacher)).spread).toBeNull();
  await act(at, teacher, { kind: 'show', shown: { ...choice, step: 'first-across' } });
  expect((await bigScreenOf(at, teacher)).spread).not.toHaveProperty('advancedWith');
});

test('the dashboard of a guided deal says who has chosen and who is held, and a hold works as in any deal', async () => {
  const class_ = await guidedClass(['Ines', 'Tomas']);
  const { at, teacher, peers } = class_;
  const shown = async () =>
    (await dashboardOf(at, teacher)).players.map((player) => [player.at, player.submitted, player.held]);
  await act(at, teacher, { kind: 'hold', before: 'first-across' });
  await chooseApart({ peers: peers.slice(0, 1) }, 'first alone');
  expect(await shown()).toEqual([
    ['first-right', true, false],
    ['first-right', false, false],
  ]);
  await chooseApart({ peers: peers.slice(1) }, 'then the other');
  await advance(class_, (await guidedDealOf(class_)).chosen[0]!.choice, 0);
  expect(await shown()).toEqual([
    ['first-across', false, true],
    ['first-across', false, true],
  ]);
  expect(await peers[0]!.choose(anyAnswer(ownView(peers[0]!), stream('held', 'line')))).toMatchObject({
    code: 'held',
  });
  await act(at, teacher, { kind: 'hold', before: null });
  await Promise.all(peers.map((peer) => peer.untilTable(({ controls: now }) => now?.held === false, 'free')));
  await chooseApart(class_, 'after the hold');
  expect((await guidedDealOf(class_)).waiting).toBe(0);
});
