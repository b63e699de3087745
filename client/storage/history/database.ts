// The database in which this browser stores the rounds played here and a teacher's drills and classes, and how an older one
// becomes a newer one.
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { RoundDetail, RoundSummary, Schedule, StoredCard } from '../../../shared-engine/index.ts';
import { HISTORY_DATABASE } from '../browser-storage.ts';

/** A summary as JSON: thousands of texts are read in a fraction of the time of as many objects. */
export interface SummaryRow {
  readonly id: string;
  /** Beside the text, so that the latest rounds are found without reading all of them. */
  readonly playedAt: number;
  readonly text: string;
}

export function rowOf(summary: RoundSummary): SummaryRow {
  return { id: summary.id, playedAt: summary.playedAt, text: JSON.stringify(summary) };
}

export function summaryOf({ text }: SummaryRow): RoundSummary {
  return JSON.parse(text);
}

/** A drill that a teacher prepares, as it is now, whether it can be dealt or not. */
export interface DrillRow {
  readonly id: string;
  readonly title: string;
  /** Whom it is for, in the teacher's own words; empty for nobody named. */
  readonly group: string;
  readonly deals: number;
  /** In milliseconds since 1970. */
  readonly changedAt: number;
  /** Key of the card on this device that it is played on; null for the house card and for one that the file carries. */
  readonly ownCard: string | null;
  /** The drill file. */
  readonly text: string;
}

/** A class that was opened or led on this device. */
export interface ClassRow {
  readonly code: string;
  readonly title: string;
  readonly group: string;
  /** In milliseconds since 1970. */
  readonly openedAt: number;
  /** The drill file that it was opened with; null where another device opened it. */
  readonly drill: string | null;
  /** Its report as this device read it last, as JSON; null before that. */
  readonly report: string | null;
}

/** What was told of a round, packed. */
export interface AnswersRow {
  readonly id: string;
  /** Which judge told it; another gives other verdicts. */
  readonly judge: string;
  /** How many answers are in it. */
  readonly count: number;
  readonly packed: string;
}

/** The index of summaries by when their rounds were played. */
export const BY_TIME = 'by-time';

export interface HistorySchema extends DBSchema {
  /** What lists and sums need, apart from the rest, so that thousands of rounds are read in a moment. */
  readonly summaries: {
    readonly key: string;
    readonly value: SummaryRow;
    readonly indexes: { readonly [BY_TIME]: number };
  };
  readonly details: { readonly key: string; readonly value: RoundDetail };
  /** Apart from the rounds, because a file takes none of it to another device: there it is worked out anew. */
  readonly answers: { readonly key: string; readonly value: AnswersRow };
  /** Each card once, however many rounds were played on it. */
  readonly cards: { readonly key: string; readonly value: StoredCard };
  /** When the exercises that were answered at least once come back. */
  readonly schedules: { readonly key: string; readonly value: Schedule };
  /** How often the summaries have changed: what was read of them holds as long as this is the same. */
  readonly changes: { readonly key: 'summaries'; readonly value: number };
  readonly drills: { readonly key: string; readonly value: DrillRow };
  readonly classes: { readonly key: string; readonly value: ClassRow };
}

export type HistoryDatabase = IDBPDatabase<HistorySchema>;

type Upgrade = IDBPTransaction<HistorySchema, StoreNames<HistorySchema>[], 'versionchange'>;

/** Step n leads from version n to version n + 1. A released step never changes. */
const STEPS: readonly ((database: HistoryDatabase, upgrade: Upgrade) => void)[] = [
  (database) => {
    database.createObjectStore('summaries', { keyPath: 'id' });
    database.createObjectStore('details', { keyPath: 'id' });
    database.createObjectStore('cards', { keyPath: 'hash' });
  },
  (database) => {
    database.createObjectStore('schedules', { keyPath: 'id' });
  },
  (database, upgrade) => {
    database.createObjectStore('changes');
    const summaries = upgrade.objectStore('summaries');
    summaries.createIndex(BY_TIME, 'playedAt');
    // Rows of before say when they were played in their text alone.
    void summaries.getAll().then((rows) => {
      for (const row of rows) void summaries.put(rowOf(summaryOf(row)));
    });
  },
  (database) => {
    database.createObjectStore('drills', { keyPath: 'id' });
    database.createObjectStore('classes', { keyPath: 'code' });
  },
  (database) => {
    database.createObjectStore('answers', { keyPath: 'id' });
  },
];

/** Why the browser gives no database. */
export type DatabaseProblem =
  /** It allows none here, as in many private windows. */
  | 'refused'
  /** A tab with an older page holds it open. */
  | 'other-tab'
  /** A newer page has been here. */
  | 'newer';

/** `full` where the browser has no room left. */
export type StorageProblem = DatabaseProblem | 'full';

export type Stored<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: StorageProblem };

export type Opened =
  | { readonly ok: true; readonly database: HistoryDatabase }
  | { readonly ok: false; readonly problem: DatabaseProblem };

let opening: Promise<Opened> | null = null;

/** The one connection of this page, opened anew when the browser has closed it. */
export function openDatabase(): Promise<Opened> {
  opening ??= open();
  return opening;
}

/** Ends the connection, so that the database can be deleted or another page can change it. */
export async function closeDatabase(): Promise<void> {
  const opened = await opening;
  opening = null;
  if (opened?.ok) opened.database.close();
}

async function open(): Promise<Opened> {
  let isBlocked = () => {};
  const blocked = new Promise<Opened>((resolve) => {
    isBlocked = () => resolve({ ok: false, problem: 'other-tab' });
  });
  // Some browsers object at once, before there is anything to wait for.
  const wanted = Promise.resolve().then(() =>
    openDB<HistorySchema>(HISTORY_DATABASE, STEPS.length, {
      upgrade(database, oldVersion, _, upgrade) {
        for (const step of STEPS.slice(oldVersion)) step(database, upgrade);
      },
      blocked: () => isBlocked(),
      // A newer page waits to change the database: this one lets go and opens it again when it needs it.
      blocking: () => void closeDatabase(),
      terminated: () => {
        opening = null;
      },
    }),
  );
  const opened = wanted.then(
    (database): Opened => ({ ok: true, database }),
    (error: unknown): Opened => ({ ok: false, problem: problemOf(error) }),
  );
  const result = await Promise.race([opened, blocked]);
  // What failed is tried again by the next call.
  if (!result.ok) opening = null;
  return result;
}

function problemOf(error: unknown): DatabaseProblem {
  return error instanceof DOMException && error.name === 'VersionError' ? 'newer' : 'refused';
}

/** Runs `use` on the database; whatever the browser objects to becomes a word. */
export async function withDatabase<T>(use: (database: HistoryDatabase) => Promise<T>): Promise<Stored<T>> {
  const opened = await openDatabase();
  if (!opened.ok) return opened;
  try {
    return { ok: true, value: await use(opened.database) };
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    return { ok: false, problem: full ? 'full' : 'refused' };
  }
}
