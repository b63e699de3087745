// A round of a server's table that goes on in the page: what its seat knew and chose, and nothing else.
import { expect, it } from 'vitest';
import { keepRounds } from '../../client/practice/history/keep-rounds.ts';
import { wentOnFrom } from '../../client/practice/play-on.ts';
import { mayPlayOn } from '../../client/room/playing-on.ts';
import { noteFinishedHere, readWentOn, storeWentOn, wasFinishedHere } from '../../client/storage/went-on.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import type { SeatInfo } from '../../shared-engine/protocol/table.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { pageRoomOf } from '../kit/page-room.ts';
import { card, openTable, simplest } from '../kit/page-tables.ts';
import { seedNamed } from '../kit/rounds.ts';

it('G2 G3 a round goes on with what its seat knew and chose, opens nothing, and comes out again after a reload', async () => {
  const left = await openTable();
  left.table.send(simplest(left.view(), 1));
  const own = simplest(left.view(), 1);
  const means = { card, simd: NO_SIMD, seed: seedNamed('anew') };
  const wentOn = wentOnFrom({ table: left.last(), pending: [own] }, means)!;
  expect(wentOn).toMatchObject({ left: 1, leftAt: 'first-across' });
  const back = { ...own, id: 'back', choice: { kind: 'withdraw', step: 'first-across' } } as const;
  expect(wentOnFrom({ table: left.last(), pending: [own, back] }, means)?.round.answers).toEqual([]);
  const here = await openTable(undefined, wentOn.round);
  const [first, second] = here.view().record.steps;
  expect([first]).toEqual(left.view().record.steps);
  expect(second).toMatchObject({ gave: own.kind === 'choose' && 'tiles' in own.choice && own.choice.tiles });
  while (here.view().stage.phase !== 'closed') here.table.send(simplest(here.view(), 1));
  expect(here.view()).toMatchObject({ commitment: null, stage: { opened: null, racks: null } });
  const review = here.messages.find((message) => message.kind === 'review')?.review;
  expect(review).toEqual(reviewRound(here.view().record, createSwarKernel(card)));
  const storage = memoryStorage();
  storeWentOn(storage, { ...wentOn, round: here.stored() });
  expect(readWentOn(storage, 'another')).toBeNull();
  const again = await openTable(undefined, readWentOn(storage, 'here')!.round);
  expect(again.last()).toEqual(here.last());
});

it('G1 G4 only somebody alone with bots of one style goes on, without a deadline and in a round that is not over; what was finished is noted', async () => {
  const { table, last, view } = await openTable();
  const [bot, you, ...others] = last().seats;
  if (bot.kind !== 'bot') throw new Error('no bot');
  const external = { ...bot, external: { by: 'Runa', present: true } };
  const isOffered = (first: SeatInfo) =>
    mayPlayOn({ ...last(), seats: [first, you, others[0]!, others[1]!] });
  const offered = [bot, { ...bot, style: 'random' } as const, external, you].map(isOffered);
  expect(offered).toEqual([true, false, false, false]);
  const timed = { ...view(), terms: { ...view().terms, deadline: 30 } };
  expect(mayPlayOn({ ...last(), view: timed })).toBe(false);
  while (view().stage.phase !== 'closed') table.send(simplest(view(), 1));
  expect([mayPlayOn(last()), mayPlayOn(null)]).toEqual([false, false]);
  const storage = memoryStorage();
  noteFinishedHere(storage, 'TABLE', 3);
  expect([wasFinishedHere(storage, 'TABLE', 3), wasFinishedHere(storage, 'TABLE', 4)]).toEqual([true, false]);
});

it('a deal of the page and the one to which the server gives its number are closed at times of their own', async () => {
  const { last, view } = await openTable();
  const { room, on } = pageRoomOf('here');
  let times = 0;
  keepRounds(room, {
    placeOf: () => 'page',
    loadCardFile: async () => null,
    now: () => ++times,
    startTimer: () => () => {},
    notes: memoryStorage(),
  });
  const stage = { phase: 'closed', opened: null, racks: null } as const;
  const tell = () => on.message({ kind: 'table', seq: 1, table: { ...last(), view: { ...view(), stage } } });
  on.state({ kind: 'here', isServerBack: true, left: { round: 1, step: 'vote' } });
  tell();
  tell();
  expect(times).toBe(1);
  on.state({ kind: 'open' });
  tell();
  expect(times).toBe(2);
});
