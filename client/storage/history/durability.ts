// Whether the browser still has what it was given: it may forget rounds by itself, or refuse to store any.
import { onOtherTabs, type TextStorage } from '../browser-storage.ts';
import type { StorageProblem } from './database.ts';

const COUNT = 'rounds-stored';
const PROBLEM = 'rounds-problem';

const watchers = new Set<() => void>();

/**
 * How many rounds there should be after `change` more of them, or fewer, were stored here, where `present` are. Only what
 * was wanted is noted, so that a loss stays a loss however many rounds are stored after it.
 */
export function noteChange(storage: TextStorage, change: number, present: number): void {
  noteCount(storage, Math.max((noted(storage) ?? present - change) + change, present));
}

/** What is here now is what there should be: somebody has been told of whatever is missing. */
export function noteCount(storage: TextStorage, present: number): void {
  storage.write(COUNT, String(present));
  for (const run of watchers) run();
}

/** How many rounds the browser has forgotten by itself, as long as nobody has been told; 0 where it has forgotten none. */
export function forgottenRounds(storage: TextStorage, present: number): number {
  return Math.max(0, (noted(storage) ?? present) - present);
}

/** Runs `run` when this tab or another has stored rounds or deleted some; returns what ends it. */
export function onRoundsChanged(run: () => void): () => void {
  watchers.add(run);
  const end = onOtherTabs(COUNT, run);
  return () => {
    watchers.delete(run);
    end();
  };
}

function noted(storage: TextStorage): number | null {
  const count = Number(storage.read(COUNT) ?? Number.NaN);
  return Number.isInteger(count) ? count : null;
}

/** Why the last round could not be stored, until one can be again. */
export function noteProblem(storage: TextStorage, problem: StorageProblem | null): void {
  if (problem === null) storage.remove(PROBLEM);
  else storage.write(PROBLEM, problem);
}

const PROBLEMS: readonly StorageProblem[] = ['refused', 'other-tab', 'newer', 'full'];

export function notedProblem(storage: TextStorage): StorageProblem | null {
  const noted = storage.read(PROBLEM);
  return PROBLEMS.find((problem) => problem === noted) ?? null;
}

/** Asks the browser to store for good; false where it may still delete everything when room gets short. */
export async function askToPersist(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}
