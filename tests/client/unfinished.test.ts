// Rounds that were begun and left: where each goes on, and when it no longer does.
import { describe, expect, it } from 'vitest';
import { followUnfinished } from '../../client/practice/history/note-unfinished.ts';
import { placeName } from '../../client/practice/history/strings.ts';
import { noteUnfinished, type UnfinishedRound, unfinishedRounds } from '../../client/storage/unfinished.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { pageRoomOf } from '../kit/page-room.ts';
import { openTable, simplest } from '../kit/page-tables.ts';

const round = (path: string, isInPage: boolean): UnfinishedRound => ({
  path,
  isInPage,
  place: isInPage ? 'page' : 'alone',
  table: 'TABLE',
  number: 1,
});

describe('rounds that are not over', () => {
  it('are listed with the latest first, of the deals in the page the last alone', () => {
    const storage = memoryStorage();
    for (const one of [round('/#deal-1', true), round('/t/ONE', false), round('/#deal-2', true)]) {
      noteUnfinished(storage, one);
    }
    noteUnfinished(storage, round('/t/ONE', false));
    expect(unfinishedRounds(storage).map(({ path }) => path)).toEqual(['/t/ONE', '/#deal-2']);
    for (const path of ['/t/TWO', '/t/SIX', '/t/TEN']) noteUnfinished(storage, round(path, false));
    expect(unfinishedRounds(storage)).toHaveLength(4);
    storage.write('unfinished', '[{"path":"https://elsewhere"}]');
    expect(unfinishedRounds(storage)).toEqual([]);
  });

  it('are noted from the first choice on, and forgotten at the close', async () => {
    const { table, last, view } = await openTable();
    const notes = memoryStorage();
    const { room, on } = pageRoomOf('here');
    followUnfinished(room, { path: () => '/#deal', isInPage: true, placeOf: () => 'page', notes });
    const tell = () => on.message({ kind: 'table', seq: 1, table: last() });
    tell();
    expect(unfinishedRounds(notes)).toEqual([]);
    table.send(simplest(view(), 1));
    tell();
    const [noted] = unfinishedRounds(notes);
    expect(noted).toMatchObject({ path: '/#deal', number: last().round, isInPage: true });
    expect(placeName(noted!)).toBe('Alone, without the server');
    while (view().stage.phase !== 'closed') {
      table.send(simplest(view(), 1));
      tell();
    }
    expect(unfinishedRounds(notes)).toEqual([]);
  });

  it('are forgotten where the seat was given up or the table is gone, and not while a connection is away', async () => {
    const { table, last, view } = await openTable();
    table.send(simplest(view(), 1));
    const ends: readonly ((on: ReturnType<typeof pageRoomOf>['on']) => void)[] = [
      (on) => on.message({ kind: 'table', seq: 2, table: { ...last(), you: null } }),
      (on) => on.state({ kind: 'ended', reason: 'no-room' }),
    ];
    for (const end of ends) {
      const notes = memoryStorage();
      const { room, on } = pageRoomOf('here');
      followUnfinished(room, { path: () => '/t/TABLE', isInPage: false, placeOf: () => 'alone', notes });
      on.message({ kind: 'table', seq: 1, table: last() });
      on.state({ kind: 'connecting' });
      expect(unfinishedRounds(notes)).toHaveLength(1);
      end(on);
      expect(unfinishedRounds(notes)).toEqual([]);
    }
  });
});
