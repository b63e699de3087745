// Rounds in this browser's database: stored, listed, read, deleted and merged with those of another device.
import { type IDBPObjectStore, type StoreNames, unwrap } from 'idb';
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
import {
  type AnswersRow,
  BY_TIME,
  type HistoryDatabase,
  type HistorySchema,
  rowOf,
  type Stored,
  summaryOf,
  withDatabase,
} from './database.ts';

type ChangesStore = IDBPObjectStore<HistorySchema, StoreNames<HistorySchema>[], 'changes', 'readwrite'>;

const STORES = ['summaries', 'details', 'cards', 'schedules'] as const;
const WRITTEN = [...STORES, 'changes'] as const;

export interface Merged {
  /** Rounds that were not here before, and rounds that were here already. */
  readonly added: number;
  readonly known: number;
}

/** All or nothing; a round that is here already stays one, with whichever verdicts go further. */
export function mergeHistory({ cards, rounds, schedules }: History): Promise<Stored<Merged>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(WRITTEN, 'readwrite');
    await noteSummariesChanged(writing.objectStore('changes'));
    const before = new Map((await writing.objectStore('summaries').getAll()).map((row) => [row.id, row]));
    // Thousands of rows are written without a promise for each of them: what fails ends the transaction.
    const [summaries, details] = [
      unwrap(writing.objectStore('summaries')),
      unwrap(writing.objectStore('details')),
    ];
    for (const card of cards) void writing.objectStore('cards').put(card);
    let added = 0;
    for (const { summary, detail } of rounds) {
      const known = before.get(summary.id);
      const next = rowOf(known ? mergedSummary(summaryOf(known), summary) : summary);
      before.set(summary.id, next);
      // The same round with nothing new in it is not written again.
      if (next.text !== known?.text) summaries.put(next);
      if (known) continue;
      added++;
      details.put(detail);
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
    const writing = database.transaction(['summaries', 'details', 'cards', 'changes'], 'readwrite');
    await noteSummariesChanged(writing.objectStore('changes'));
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
  found: Pick<RoundSummary, 'choices' | 'judge' | 'aims' | 'ledger'>,
): Promise<Stored<boolean>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(['summaries', 'changes'], 'readwrite');
    const summaries = writing.objectStore('summaries');
    const row = await summaries.get(id);
    if (row) {
      const known = summaryOf(row);
      await noteSummariesChanged(writing.objectStore('changes'));
      void summaries.put(rowOf(mergedSummary(known, { ...known, ...found })));
    }
    await writing.done;
    return row !== undefined;
  });
}

/** The latest so many, the latest first, in a fraction of the time that all of thousands take. */
export function latestRounds(most: number): Promise<Stored<readonly RoundSummary[]>> {
  return withDatabase(async (database) => {
    const { store } = database.transaction('summaries');
    const ids = (await store.index(BY_TIME).getAllKeys()).slice(-most).reverse();
    const rows = await Promise.all(ids.map((id) => store.get(id)));
    return rows.flatMap((row) => (row ? [summaryOf(row)] : []));
  });
}

/** What was last read of this database, as long as no tab has changed a summary since. */
let listed: {
  readonly database: HistoryDatabase;
  readonly change: number;
  readonly rounds: readonly RoundSummary[];
} | null = null;

/** All of them, the latest first. */
export function listRounds(): Promise<Stored<readonly RoundSummary[]>> {
  return withDatabase(async (database) => {
    const reading = database.transaction(['summaries', 'changes']);
    const change = (await reading.objectStore('changes').get('summaries')) ?? 0;
    if (listed?.database !== database || listed.change !== change) {
      const rows = await reading.objectStore('summaries').getAll();
      const rounds = rows.map(summaryOf).sort((a, b) => b.playedAt - a.playedAt);
      listed = { database, change, rounds };
    }
    return listed.rounds;
  });
}

/** Within the transaction that changes them. */
async function noteSummariesChanged(changes: ChangesStore): Promise<void> {
  void changes.put(((await changes.get('summaries')) ?? 0) + 1, 'summaries');
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
    const rounds = await listRounds();
    const latest = rounds.ok && rounds.value.find(({ table, card }) => table === code && card.hash !== null);
    const hash = latest ? latest.card.hash : null;
    return hash === null ? null : ((await database.get('cards', hash)) ?? null);
  });
}

/** What was told of a round that is still here, unless more of the same judge's is stored already. */
export function storeAnswers(row: AnswersRow): Promise<Stored<boolean>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(['summaries', 'answers'], 'readwrite');
    const answers = writing.objectStore('answers');
    const [round, known] = await Promise.all([
      writing.objectStore('summaries').getKey(row.id),
      answers.get(row.id),
    ]);
    const hasMore = known?.judge === row.judge && known.count > row.count;
    const isWanted = round !== undefined && !hasMore;
    if (isWanted) void answers.put(row);
    await writing.done;
    return isWanted;
  });
}

/** Null where nothing is stored. */
export function answersOf(id: string): Promise<Stored<AnswersRow | null>> {
  return withDatabase(async (database) => (await database.get('answers', id)) ?? null);
}

/**
 * Returns what was removed, so that it can be put back; what was told of it can be worked out again. Cards stay: they are
 * small, and rounds share them.
 */
export function removeRounds(ids: readonly string[]): Promise<Stored<readonly StoredRound[]>> {
  return withDatabase(async (database) => {
    const writing = database.transaction(['summaries', 'details', 'answers', 'changes'], 'readwrite');
    const [summaries, details] = [writing.objectStore('summaries'), writing.objectStore('details')];
    await noteSummariesChanged(writing.objectStore('changes'));
    const found = await Promise.all(ids.map((id) => Promise.all([summaries.get(id), details.get(id)])));
    for (const id of ids) {
      void summaries.delete(id);
      void details.delete(id);
      void writing.objectStore('answers').delete(id);
    }
    await writing.done;
    return found.flatMap(([row, detail]) => (row && detail ? [{ summary: summaryOf(row), detail }] : []));
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
