// A teacher's drills and classes in the browser's database: stored, listed, noted, removed and put back.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { rowOfDrill, storedDrill } from '../../client/class/model/library.ts';
import { closeDatabase } from '../../client/storage/history/database.ts';
import {
  listClasses,
  listDrills,
  noteClass,
  readClass,
  readDrill,
  removeClass,
  removeDrill,
  storeClass,
  storeDrill,
} from '../../client/storage/history/teaching.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { PRIVATE_CARD } from '../kit/private-card.ts';

beforeEach(async () => {
  await closeDatabase();
  globalThis.indexedDB = new IDBFactory();
});

const file = {
  drill: { ...drillOf([sampledDeal({ jokers: 9 })]), title: '' },
  class: { deadline: 60, racks: false, names: true, cardClosed: false },
  card: PRIVATE_CARD,
} as const;
const row = { ...rowOfDrill(file, { id: 'one', group: 'Tuesday', ownCard: 'own' }), changedAt: 1 };

async function stored<T>(done: Promise<{ readonly ok: true; readonly value: T } | { readonly ok: false }>) {
  const result = await done;
  if (!result.ok) throw new Error('not stored');
  return result.value;
}

describe('the drills of a teacher', () => {
  it('come back as they were left, the one changed last first, also where they cannot be dealt', async () => {
    await storeDrill(row);
    await storeDrill({ ...row, id: 'two', changedAt: 2 });
    expect((await stored(listDrills())).map(({ id }) => id)).toEqual(['two', 'one']);
    const read = await stored(readDrill('one'));
    expect(read).toEqual(row);
    expect(storedDrill(read!.text)).toEqual(file);
  });

  it('are removed one by one, and one that is not here is told apart', async () => {
    await storeDrill(row);
    await removeDrill('one');
    expect(await stored(readDrill('one'))).toBeNull();
    expect(await stored(listDrills())).toEqual([]);
  });
});

describe('the classes of a teacher', () => {
  it('are noted once, and what is learned later is added to what was known', async () => {
    await noteClass('AAAA2222', { title: 'Evening', group: 'Tuesday', drill: row.text }, 1);
    await noteClass('BBBB3333', { title: 'Morning' }, 2);
    await noteClass('AAAA2222', { report: '{}' }, 3);
    expect(await stored(listClasses())).toEqual([
      { code: 'BBBB3333', title: 'Morning', group: '', openedAt: 2, drill: null, report: null },
      { code: 'AAAA2222', title: 'Evening', group: 'Tuesday', openedAt: 1, drill: row.text, report: '{}' },
    ]);
  });

  it('are removed and put back as they were', async () => {
    await noteClass('AAAA2222', { title: 'Evening' }, 1);
    const known = await stored(readClass('AAAA2222'));
    await removeClass('AAAA2222');
    expect(await stored(readClass('AAAA2222'))).toBeNull();
    await storeClass(known!);
    expect(await stored(readClass('AAAA2222'))).toEqual(known);
  });
});
