// Whether the browser still has what it was given: it may forget rounds by itself, or refuse to store any.
import type { TextStorage } from '../browser-storage.ts';
import type { StorageProblem } from './rounds.ts';

const COUNT = 'rounds-stored';
const PROBLEM = 'rounds-problem';

/** How many rounds there were when one was last stored or removed here. */
export function noteCount(storage: TextStorage, count: number): void {
  storage.write(COUNT, String(count));
}

/** How many rounds the browser has forgotten by itself; 0 where it has forgotten none. */
export function forgottenRounds(storage: TextStorage, present: number): number {
  const noted = Number(storage.read(COUNT) ?? 0);
  return Number.isInteger(noted) && noted > present ? noted - present : 0;
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
