// A teacher's drills and classes in the browser's database: stored, listed, noted, removed and put back.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { figuresOf, playersOver, themesOver } from '../../client/class/library/group-figures.ts';
import { storedDrill } from '../../client/class/model/library.ts';
import { closeDatabase } from '../../client/storage/history/database.ts';
import {
  listClasses,
  listDrills,
  noteClass,
  readClass,
  readDrill,
  removeClass,
  removeDrill,
  rowOfDrill,
  storeClass,
  storeDrill,
} from '../../client/storage/history/teaching.ts';
import { CLASS_REPORT_FORMAT } from '../../shared-engine/drill/report/class-report.ts';
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

describe('the classes of a group side by side', () => {
  const mistake = (label: string, choices: number, totalWinsLost: number) =>
    ({ category: 'pair-given', label, choices, players: 1, totalWinsLost }) as const;
  const step = (count: number, costly: number | null) => ({
    ...{ seat: 0, kind: 'vote', step: 'vote', players: count, stoodIn: 0, racks: 1, rack: null, pending: 0 },
    ...{ best: null, aims: [], winsLost: null, costly },
    choices: [{ chosen: 1, count, share: 1, mistakes: [], winsLost: null, costly }],
  });
  const classOfWeek = (code: string, mistakes: readonly unknown[], players: readonly unknown[] | null) => {
    const deal = { format: CLASS_REPORT_FORMAT, deal: 'one', title: null, players: 4, pending: 0 };
    const rest = { toGoStart: null, toGoEnd: null, steps: [step(8, 2), step(4, null)], sections: {} };
    const deals = [{ ...deal, ...rest, mistakes }];
    const report = JSON.stringify({
      title: 'Evening',
      ended: true,
      anonymous: players === null,
      deals,
      players,
    });
    return figuresOf({ code, title: 'Evening', group: 'Tuesday', openedAt: 1, drill: null, report });
  };
  const lost = (name: string, ...wins: (number | null)[]) => ({
    name,
    deals: wins.map((winsLost) => ({ deal: 'one', toGoStart: 8, toGoEnd: 5, winsLost, stoodIn: 0 })),
  });

  it('tell each kind of mistake of 100 choices whose cost is known, the costliest first', () => {
    const first = classOfWeek('A', [mistake('Gave a pair away', 2, 3)], null)!;
    const second = classOfWeek('B', [mistake('Gave a pair away', 1, 1), mistake('Continued', 4, 9)], null)!;
    expect([first.players, first.choices, first.costly]).toEqual([4, 8, 2]);
    expect(themesOver([first, second])).toEqual([
      { name: 'Continued', figures: [0, 50] },
      { name: 'Gave a pair away', figures: [25, 12.5] },
    ]);
    expect(playersOver([first, second])).toEqual([]);
  });

  it('tell players by name where the class named them, and none that cannot be told apart', () => {
    const classes = [
      classOfWeek('A', [], [lost('Ines', 2, 4), lost('Odo', 1)])!,
      classOfWeek('B', [], [lost('Ines', 1, null), lost('Odo', 1), lost('Odo', 2)])!,
      classOfWeek('C', [], null)!,
    ];
    expect(playersOver(classes)).toEqual([
      { name: 'Ines', figures: [3, 1, null] },
      { name: 'Odo', figures: [1, null, null] },
    ]);
  });

  it('leave out a report that is not kept, torn or of another version', () => {
    const row = { code: 'A', title: '', group: '', openedAt: 1, drill: null };
    for (const report of [null, '{', '{}', '[]']) expect(figuresOf({ ...row, report })).toBeNull();
  });
});
