// The list of rounds as the page shows it: read, deleted and put back, saved and added to.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { RoundSummary, StoredRound } from '../../../shared-engine/index.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { forgottenRounds, noteChange, noteCount, notedProblem } from '../../storage/history/durability.ts';
import { historyFileParts, readHistoryFile } from '../../storage/history/file.ts';
import {
  latestRounds,
  listRounds,
  mergeHistory,
  removeRounds,
  wholeHistory,
} from '../../storage/history/rounds.ts';
import { fileProblem, merged, STORAGE_PROBLEMS } from './strings.ts';

export interface HistoryState {
  /** Null while they are being read. */
  readonly rounds: readonly RoundSummary[] | null;
  /** Whether these are all: the latest come first. */
  readonly isWhole: boolean;
  readonly problem: StorageProblem | null;
  /** Rounds that the browser has lost by itself, until somebody has been told. */
  readonly forgotten: number;
  /** Deleted last, and still to be had back. */
  readonly removed: readonly StoredRound[];
  /** What came of a file. */
  readonly message: string | null;
  readonly busy: boolean;
}

export interface HistoryModel {
  readonly state: ReadonlySignal<HistoryState>;
  load(): Promise<void>;
  remove(ids: readonly string[]): Promise<void>;
  putBack(): Promise<void>;
  add(file: Blob): Promise<void>;
  /** Somebody has read that rounds were lost. */
  acknowledge(): Promise<void>;
  /** The parts of the file to save; null where the rounds cannot be read. */
  fileParts(): Promise<readonly string[] | null>;
}

/** Rounds shown before somebody asks for more, and each time somebody does. */
export const AT_ONCE = 30;

export interface HistoryPorts {
  readonly notes: TextStorage;
  /** Lets the page breathe between two pieces of a large file. */
  readonly pause: () => Promise<void>;
}

export function historyModel({ notes, pause }: HistoryPorts): HistoryModel {
  const state = signal<HistoryState>({
    rounds: null,
    isWhole: false,
    problem: null,
    forgotten: 0,
    removed: [],
    message: null,
    busy: false,
  });
  const change = (part: Partial<HistoryState>) => {
    state.value = { ...state.value, ...part };
  };

  /** `changed` is how many rounds somebody has just added or deleted. */
  async function load(changed?: number): Promise<void> {
    if (state.value.rounds === null) {
      const latest = await latestRounds(AT_ONCE);
      // All of them follow; whether there are any is known then.
      if (latest.ok && latest.value.length > 0) change({ rounds: latest.value });
    }
    const listed = await listRounds();
    if (!listed.ok) return change({ rounds: [], problem: listed.problem });
    const rounds = listed.value;
    if (changed !== undefined) noteChange(notes, changed, rounds.length);
    change({
      rounds,
      isWhole: true,
      problem: notedProblem(notes),
      forgotten: forgottenRounds(notes, rounds.length),
    });
  }

  return {
    state,
    load: () => load(),
    async remove(ids) {
      const removed = await removeRounds(ids);
      if (!removed.ok) return change({ problem: removed.problem });
      change({ removed: removed.value, message: null });
      await load(-removed.value.length);
    },
    async putBack() {
      const put = await mergeHistory({ cards: [], rounds: state.value.removed, schedules: [] });
      if (!put.ok) return change({ problem: put.problem });
      change({ removed: [] });
      await load(put.value.added);
    },
    async add(file) {
      change({ busy: true, message: null, removed: [] });
      const message = await addFile(file, pause);
      change({ busy: false, message });
      // Rounds of a file may be those that were lost, so that they count as found and not as more.
      await load(0);
    },
    async acknowledge() {
      noteCount(notes, state.value.rounds?.length ?? 0);
      await load();
    },
    async fileParts() {
      const whole = await wholeHistory();
      if (whole.ok) return historyFileParts(whole.value);
      change({ problem: whole.problem });
      return null;
    },
  };
}

async function addFile(file: Blob, pause: () => Promise<void>): Promise<string> {
  const read = await readHistoryFile(file, pause);
  if (!read.ok) return fileProblem(read.problem);
  const done = await mergeHistory(read.history);
  return done.ok ? merged(done.value.added, done.value.known) : STORAGE_PROBLEMS[done.problem];
}
