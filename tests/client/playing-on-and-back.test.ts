// A server's table that goes on in the page and is come back to: what is left when, and what is said where it cannot.
import { expect, it } from 'vitest';
import { connectOrPlayOn, type PlayingOnPorts } from '../../client/app/playing-on.ts';
import { PLAYING_ON } from '../../client/app/room-strings.ts';
import { openPendingRequests } from '../../client/connection/pending.ts';
import { wentOnFrom } from '../../client/practice/play-on.ts';
import { seatedAt } from '../../client/room/room.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import { noteFinishedHere, storeWentOn, wasFinishedHere } from '../../client/storage/went-on.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { pageRoomOf } from '../kit/page-room.ts';
import { card, DEAL, newTable, openTable, simplest } from '../kit/page-tables.ts';

type Parts = Pick<PlayingOnPorts, 'loadCard' | 'fetchPageTable' | 'isThere'>;

const CODE = 'ABCD2345';
const ALL: Parts = {
  loadCard: async () => card,
  fetchPageTable: async () => newTable,
  isThere: async () => false,
};

/**
 * The table of a page whose server is out of reach; `told` is the last that it said, if it said anything. The tab has what
 * is stored as well.
 */
function outOfReach(storage: TextStorage, told: Table | null, parts: Parts = ALL) {
  const asked: string[] = [];
  const messages: ServerMessage[] = [];
  const back: boolean[] = [];
  const looks: (() => void)[] = [];
  let hear: (heard: string) => void = () => {};
  let server: Parameters<PlayingOnPorts['connect']>[0];
  const connection = connectOrPlayOn({
    ...parts,
    code: CODE,
    pending: openPendingRequests(storage, 'requests'),
    storage,
    tab: storage,
    connect(on) {
      server = on;
      return {
        start() {
          asked.push('start');
          if (told) on.message({ kind: 'table', seq: 1, table: { ...told, code: CODE } });
          on.state({ kind: 'waiting', failures: 2 });
        },
        retryNow() {},
        send() {},
        stop: () => asked.push('stop'),
      };
    },
    startTimer(_, look) {
      looks.push(look);
      return () => {};
    },
    on: {
      state(state) {
        if (state.kind !== 'here') return;
        back.push(state.isServerBack);
        hear(state.kind);
      },
      message(message) {
        messages.push(message);
        if (message.kind === 'rejected') hear(message.message);
      },
    },
  });
  /** What is heard next: that the round is here, or why it is not. */
  const heardAfter = (run: () => void) =>
    new Promise<string>((resolve) => {
      hear = resolve;
      run();
    });
  const last = () => messages.findLast((message) => message.kind === 'table')!.table;
  const view = () => seatedAt(last())!.view;
  return {
    connection,
    /** Of the connection to the server. */
    asked,
    server: () => server,
    /** Whether the server was said to be back, and the looks for it that are to come. */
    back,
    looks,
    last,
    start: () => heardAfter(() => connection.start()),
    playOn: () => heardAfter(() => connection.playOn!()),
    finish() {
      while (view().stage.phase !== 'closed') connection.send(simplest(view(), last().round));
    },
  };
}

it('G4 of the deals in the page only the one that was left counts as finished here, also after a reload, and goes on here no second time', async () => {
  const left = await openTable();
  const storage = memoryStorage();
  const first = outOfReach(storage, left.last());
  first.connection.start();
  expect(await first.playOn()).toBe('here');
  first.finish();
  expect(wasFinishedHere(storage, CODE, 1)).toBe(true);
  first.connection.send({ kind: 'action', id: 'next', action: { kind: 'ready', ready: true } });
  expect(first.last().round).toBe(2);
  first.connection.stop();
  const again = outOfReach(storage, null);
  expect(await again.start()).toBe('here');
  expect(again.last()).toMatchObject({ round: 2, view: first.last().view });
  again.finish();
  const noted = [1, 2].map((round) => wasFinishedHere(storage, CODE, round));
  expect(noted).toEqual([true, false]);
  // Another table has taken the place of what went on here.
  storage.remove('went-on');
  noteFinishedHere(storage, 'EFGH6789', 4);
  expect(outOfReach(storage, null).connection.canPlayOn!()).toBe(false);
  for (const [round, isOffered] of [[1, false] as const, [2, true] as const]) {
    const told = outOfReach(storage, { ...left.last(), round });
    told.connection.start();
    expect(told.connection.canPlayOn!()).toBe(isOffered);
  }
});

it('G4 a page that plays on says when the server is back and when it is gone again, and looks no more once it is left', async () => {
  const left = await openTable();
  let isThere = false;
  const page = outOfReach(memoryStorage(), left.last(), { ...ALL, isThere: async () => isThere });
  const settle = () => new Promise((resolve) => setImmediate(resolve));
  page.connection.start();
  await page.playOn();
  await settle();
  expect(page.back).toEqual([false]);
  isThere = true;
  page.looks.pop()!();
  await settle();
  expect(page.back).toEqual([false, true]);
  isThere = false;
  page.connection.retryNow();
  await settle();
  expect(page.back).toEqual([false, true, false]);
  isThere = true;
  page.connection.retryNow();
  page.connection.backToServer!();
  await settle();
  expect(page.back).toEqual([false, true, false]);
  expect(page.asked).toEqual(['start', 'stop', 'start']);
});

it('G4 a round here is forgotten once its table is gone, and no page in which it still goes on brings it back', async () => {
  const left = await openTable();
  const storage = memoryStorage();
  const page = outOfReach(storage, left.last());
  page.connection.start();
  await page.playOn();
  const other = outOfReach(storage, null);
  expect(other.connection.canPlayOn!()).toBe(true);
  other.server().state({ kind: 'ended', reason: 'no-room' });
  page.connection.send(simplest(seatedAt(page.last())!.view, 1));
  expect(seatedAt(page.last())?.view.record.steps).toHaveLength(1);
  const opened = outOfReach(storage, null).connection.canPlayOn!();
  expect([other.connection.canPlayOn!(), opened]).toEqual([false, false]);
});

it('G1 a round that cannot go on here says what it lacks, and the page still tries to come back', async () => {
  const left = await openTable();
  const storage = memoryStorage();
  const told = left.last();
  const lacks: readonly (readonly [Partial<Parts>, Table, string])[] = [
    [{ loadCard: async () => null }, told, PLAYING_ON.noCard],
    // The table has got another card since.
    [{}, { ...told, card: { id: 'another', name: 'Another' } }, PLAYING_ON.noCard],
    [{ fetchPageTable: () => Promise.reject(new Error('offline')) }, told, PLAYING_ON.noPart],
    [{}, { ...told, view: { ...left.view(), rack: [] } }, PLAYING_ON.noTiles],
  ];
  for (const [part, table, sentence] of lacks) {
    const page = outOfReach(storage, table, { ...ALL, ...part });
    page.connection.start();
    expect(await page.playOn()).toBe(sentence);
    expect(page.asked).toEqual(['start']);
  }
  const page = outOfReach(storage, told);
  page.connection.start();
  await page.playOn();
  expect(page.asked).toEqual(['start', 'stop']);
  page.connection.stop();
  const reloaded = outOfReach(storage, null, { ...ALL, loadCard: async () => null });
  expect(await reloaded.start()).toBe(PLAYING_ON.noCard);
  expect([reloaded.asked, reloaded.connection.canPlayOn!()]).toEqual([['start'], true]);
});

it('G1 a page that is opened anew before its round goes on here goes on from what it was told and chose', async () => {
  const left = await openTable();
  const storage = memoryStorage();
  const own = simplest(left.view(), 1);
  openPendingRequests(storage, 'requests').add(own);
  outOfReach(storage, left.last()).connection.start();
  const reloaded = outOfReach(storage, null);
  reloaded.connection.start();
  expect(reloaded.connection.canPlayOn!()).toBe(true);
  expect(await reloaded.playOn()).toBe('here');
  expect(seatedAt(reloaded.last())?.view.record.steps[0]).toMatchObject({
    gave: own.kind === 'choose' && 'tiles' in own.choice && own.choice.tiles,
  });
  // What is over, is of others or was stored torn leaves nothing to go on from.
  const classTable = { ...left.last(), controls: { held: false, standIn: false, cardClosed: false } };
  storage.remove('went-on');
  outOfReach(storage, classTable).connection.start();
  expect(outOfReach(storage, null).connection.canPlayOn!()).toBe(false);
  storage.write(`told.${CODE}`, '{"code":');
  expect(outOfReach(storage, null).connection.canPlayOn!()).toBe(false);
});

it('a page that is left while its round is being made ready goes on nowhere', async () => {
  const { last } = await openTable();
  const storage = memoryStorage();
  storeWentOn(
    storage,
    wentOnFrom({ table: { ...last(), code: CODE }, pending: [] }, { card, simd: NO_SIMD, seed: DEAL.seed })!,
  );
  let arrive = () => {};
  const fetchPageTable = () =>
    new Promise<typeof newTable>((resolve) => {
      arrive = () => resolve(newTable);
    });
  const page = outOfReach(storage, null, { ...ALL, fetchPageTable });
  page.connection.start();
  page.connection.stop();
  arrive();
  await new Promise((resolve) => setImmediate(resolve));
  expect(page.asked).toEqual(['stop']);
});

it('G4 whoever goes back before the round here has opened is not held here, and the server is looked for no sooner', async () => {
  const left = await openTable();
  let arrive = () => {};
  let isAsked = () => {};
  const asked = new Promise<void>((resolve) => {
    isAsked = resolve;
  });
  const held = () => {
    isAsked();
    return new Promise<typeof card>((resolve) => {
      arrive = () => resolve(card);
    });
  };
  const fetchPageTable = async () => (table: Parameters<typeof newTable>[0]) =>
    newTable({ ...table, loadCard: held });
  const looks: string[] = [];
  const isThere = async () => looks.push('look') > 0;
  const page = outOfReach(memoryStorage(), left.last(), { ...ALL, fetchPageTable, isThere });
  page.connection.start();
  page.connection.playOn!();
  await asked;
  page.connection.backToServer!();
  arrive();
  await new Promise((resolve) => setImmediate(resolve));
  expect([page.back, looks, page.asked]).toEqual([[], [], ['start', 'stop', 'start']]);
});

it('G4 what was marked in the page since the table was left is gone with it, what was marked before stays', () => {
  const saved: unknown[] = [];
  const save = (marks: unknown) => saved.push(marks);
  const { room, on } = pageRoomOf('here', { saveAims: save, saveHelped: save });
  const left = { round: 2, step: 'first-left' } as const;
  room.noteHelp(1, 'second-right');
  on.state({ kind: 'here', isServerBack: false, left });
  const marked = [[2, 'first-left'] as const, [2, 'second-left'] as const, [3, 'first-right'] as const];
  for (const [round, step] of marked) {
    room.noteHelp(round, step);
    room.toggleAim(round, step, 'stairs');
  }
  on.state({ kind: 'connecting' });
  const kept = [{ '2/first-left': ['stairs'] }, ['1/second-right', '2/first-left']];
  expect([room.state.value.aims, room.state.value.helped]).toEqual(kept);
  expect(saved.slice(-2)).toEqual(kept);
});

it('why a round could not go on here is said until its table is back', () => {
  const { room, on } = pageRoomOf('here');
  on.message({ kind: 'rejected', id: null, code: 'try-later', message: PLAYING_ON.noCard });
  on.state({ kind: 'waiting', failures: 2 });
  expect(room.state.value.notice).toBe(PLAYING_ON.noCard);
  on.state({ kind: 'open' });
  expect(room.state.value.notice).toBeNull();
});
