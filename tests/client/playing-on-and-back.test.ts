// A server's table that goes on in the page and is come back to: what is left when, and what is said where it cannot.
import { expect, it } from 'vitest';
import { connectOrPlayOn, type PlayingOnPorts } from '../../client/app/playing-on.ts';
import { openPendingRequests } from '../../client/connection/pending.ts';
import { seatedAt } from '../../client/room/room.ts';
import type { TextStorage } from '../../client/storage/browser-storage.ts';
import { wasFinishedHere } from '../../client/storage/went-on.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { card, newTable, openTable, simplest } from '../kit/page-tables.ts';

type Parts = Pick<PlayingOnPorts, 'loadCard' | 'fetchPageTable'>;

const ALL: Parts = { loadCard: async () => card, fetchPageTable: async () => newTable };

/** The table of a page whose server is out of reach; `told` is the last that it said. */
function outOfReach(storage: TextStorage, told: Table | null, parts: Parts = ALL) {
  const asked: string[] = [];
  const messages: ServerMessage[] = [];
  let hear: (heard: string) => void = () => {};
  const connection = connectOrPlayOn({
    ...parts,
    code: 'here',
    pending: openPendingRequests(memoryStorage(), 'requests'),
    storage,
    connect: (on) => ({
      start() {
        asked.push('start');
        if (told) on.message({ kind: 'table', seq: 1, table: told });
        on.state({ kind: 'waiting', failures: 2 });
      },
      retryNow() {},
      send() {},
      stop: () => asked.push('stop'),
    }),
    on: {
      state: ({ kind }) => kind === 'here' && hear(kind),
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
    last,
    start: () => heardAfter(() => connection.start()),
    playOn: () => heardAfter(() => connection.playOn!()),
    finish() {
      while (view().stage.phase !== 'closed') connection.send(simplest(view(), last().round));
    },
  };
}

it('G4 of the deals in the page only the one that was left counts as finished here, also after a reload', async () => {
  const left = await openTable();
  const storage = memoryStorage();
  const first = outOfReach(storage, left.last());
  first.connection.start();
  expect(await first.playOn()).toBe('here');
  first.finish();
  expect(wasFinishedHere(storage, 'here', 1)).toBe(true);
  first.connection.send({ kind: 'action', id: 'next', action: { kind: 'ready', ready: true } });
  expect(first.last().round).toBe(2);
  first.connection.stop();
  const again = outOfReach(storage, null);
  expect(await again.start()).toBe('here');
  expect(again.last()).toMatchObject({ round: 2, view: first.last().view });
  again.finish();
  const noted = [1, 2].map((round) => wasFinishedHere(storage, 'here', round));
  expect(noted).toEqual([true, false]);
});
