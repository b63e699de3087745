// Rounds in this browser's database: stored, listed, read, deleted and merged with those of another device.
import {
  type History,
  laterSchedule,
  mergedSummary,
  type RoundDetail,
  type RoundSummary,
  type Schedule,
  type StoredCard,
  type StoredRound,
} from '../../../shared-engine/index.ts';
import { type DatabaseProblem, type HistoryDatabase, openDatabase, rowOf, summaryOf } from './database.ts';

/** `full` where the browser has no room left. */
export type StorageProblem = DatabaseProblem | 'full';

export type Stored<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: StorageProblem };

const STORES = ['summaries', 'details', 'cards', 'schedules'] as const;

/** Runs `use` on the database; whatever the browser objects to becomes a word. */
async function withDatabase<T>(use: (database: HistoryDatabase) => Promise<T>): Promise<Stored<T>> {
  const opened = await openDatabase();
  if (!opened.ok) return opened;
  try {
    return { ok: true, value: await use(opened.database) };
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    return { ok: false, problem: full ? 'full' : 'refused' };
  }
}

export interface Merged {
  /** Rounds that were not here before, and rounds that were here already. */
  readonly added: number;
  readonly known: number;
}

/** All or nothing; a round that is here already stays one, with whichever verdicts go further. */
export function mergeHistory({ cards, rounds, schedules }: History): Promise<Stored<Merged>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(STORES, 'readwrite');
    const [summaries, details] = [writing.objectStore('summaries'), writing.objectStore('details')];
    const before = new Map((await summaries.getAll()).map((row) => [row.id, row]));
    for (const card of cards) void writing.objectStore('cards').put(card);
    let added = 0;
    for (const { summary, detail } of rounds) {
      const known = before.get(summary.id);
      const next = rowOf(known ? mergedSummary(summaryOf(known), summary) : summary);
      before.set(summary.id, next);
      // The same round with nothing new in it is not written again.
      if (next.text !== known?.text) void summaries.put(next);
      if (known) continue;
      added++;
      void details.put(detail);
    }
    for (const schedule of schedules) {
      const known = await writing.objectStore('schedules').get(schedule.id);
      void writing.objectStore('schedules').put(known ? laterSchedule(known, schedule) : schedule);
    }
    await writing.done;
    return { added, known: rounds.length - added };
  });
}

export interface Kept {
  /** Whether the round was not here before. */
  readonly isNew: boolean;
  /** How many rounds there are now. */
  readonly count: number;
}

/** One round, and its card where that is known. */
export function storeRound(round: StoredRound, card: StoredCard | null): Promise<Stored<Kept>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(['summaries', 'details', 'cards'], 'readwrite');
    const summaries = writing.objectStore('summaries');
    const known = await summaries.get(round.summary.id);
    void summaries.put(rowOf(known ? mergedSummary(summaryOf(known), round.summary) : round.summary));
    void writing.objectStore('details').put(round.detail);
    if (card) void writing.objectStore('cards').put(card);
    const count = await summaries.count();
    await writing.done;
    return { isNew: known === undefined, count };
  });
}

/** What a review found later about a round that is still here; false, and nothing is stored, where it has been deleted. */
export function storeVerdicts(
  id: string,
  found: Pick<RoundSummary, 'choices' | 'judge'>,
): Promise<Stored<boolean>> {
  return withDatabase(async (database) => {
    const writing = database.transaction('summaries', 'readwrite');
    const row = await writing.store.get(id);
    if (row) {
      const known = summaryOf(row);
      void writing.store.put(rowOf(mergedSummary(known, { ...known, ...found })));
    }
    await writing.done;
    return row !== undefined;
  });
}

/** All of them, the latest first. */
export function listRounds(): Promise<Stored<readonly RoundSummary[]>> {
  return withDatabase(async (database) =>
    (await database.getAll('summaries')).map(summaryOf).sort((a, b) => b.playedAt - a.playedAt),
  );
}

/** One round whole with its card; null where it is not here. */
export function readRound(
  id: string,
): Promise<Stored<{ readonly round: StoredRound; readonly card: StoredCard | null } | null>> {
  return withDatabase(async (database) => {
    const [row, detail] = await Promise.all([database.get('summaries', id), database.get('details', id)]);
    if (!row || !detail) return null;
    const summary = summaryOf(row);
    const { hash } = summary.card;
    const card = hash === null ? null : ((await database.get('cards', hash)) ?? null);
    return { round: { summary, detail }, card };
  });
}

/** The card that was last played on at this table; null where none is stored. */
export function cardOfTable(code: string): Promise<Stored<StoredCard | null>> {
  return withDatabase(async (database) => {
    const summaries = (await database.getAll('summaries')).map(summaryOf);
    const hash = summaries.findLast(({ table, card }) => table === code && card.hash !== null)?.card.hash;
    return hash ? ((await database.get('cards', hash)) ?? null) : null;
  });
}

/** Returns what was removed, so that it can be put back. Cards stay: they are small, and rounds share them. */
export function removeRounds(ids: readonly string[]): Promise<Stored<readonly StoredRound[]>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(['summaries', 'details'], 'readwrite');
    const removed: StoredRound[] = [];
    for (const id of ids) {
      const row = await writing.objectStore('summaries').get(id);
      const detail = await writing.objectStore('details').get(id);
      if (row && detail) removed.push({ summary: summaryOf(row), detail });
      void writing.objectStore('summaries').delete(id);
      void writing.objectStore('details').delete(id);
    }
    await writing.done;
    return removed;
  });
}

/** When the exercises answered so far come back. */
export function listSchedules(): Promise<Stored<readonly Schedule[]>> {
  return withDatabase((database) => database.getAll('schedules'));
}

export function storeSchedule(schedule: Schedule): Promise<Stored<string>> {
  return withDatabase((database) => database.put('schedules', schedule));
}

/** Everything, to be saved as a file. */
export function wholeHistory(): Promise<Stored<History>> {
  return withDatabase(async (database) => {
    const reading = database.transaction(STORES);
    const [summaries, details, cards, schedules] = await Promise.all([
      reading.objectStore('summaries').getAll(),
      reading.objectStore('details').getAll(),
      reading.objectStore('cards').getAll(),
      reading.objectStore('schedules').getAll(),
    ]);
    const byId = new Map<string, RoundDetail>(details.map((detail) => [detail.id, detail]));
    const rounds = summaries.flatMap((row): StoredRound[] => {
      const detail = byId.get(row.id);
      return detail ? [{ summary: summaryOf(row), detail }] : [];
    });
    return { cards, rounds, schedules };
  });
}
