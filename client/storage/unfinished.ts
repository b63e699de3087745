// Rounds that were begun in this browser and are not over: where each of them goes on.
import * as z from 'zod';
import { ROUND_PLACES, type RoundSummary } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';
import { jsonOf } from './page-round.ts';

export interface UnfinishedRound extends Pick<RoundSummary, 'place' | 'table' | 'number'> {
  /** The page's own path to its table. */
  readonly path: string;
  /** Whether it was dealt in the page, which stores one round alone. */
  readonly isInPage: boolean;
}

const KEY = 'unfinished';

/** Tables lie where their players left them; only the latest are worth a line. */
const MOST_UNFINISHED = 4;

const unfinishedSchema: z.ZodType<readonly UnfinishedRound[]> = z.array(
  z.strictObject({
    place: z.enum(ROUND_PLACES),
    table: z.string(),
    number: z.int().min(1),
    path: z.string().startsWith('/'),
    isInPage: z.boolean(),
  }),
);

/** The one last played at first. */
export function unfinishedRounds(storage: TextStorage): readonly UnfinishedRound[] {
  const parsed = unfinishedSchema.safeParse(jsonOf(storage.read(KEY)));
  return parsed.success ? parsed.data : [];
}

/** A table has one such round, and so have all deals of the page together. */
export function noteUnfinished(storage: TextStorage, round: UnfinishedRound): void {
  const others = unfinishedRounds(storage).filter(
    ({ path, isInPage }) => path !== round.path && !(isInPage && round.isInPage),
  );
  write(storage, [round, ...others].slice(0, MOST_UNFINISHED));
}

/** It is over, or nobody can go on with it. */
export function forgetUnfinished(storage: TextStorage, path: string): void {
  const rounds = unfinishedRounds(storage);
  const others = rounds.filter((round) => round.path !== path);
  if (others.length < rounds.length) write(storage, others);
}

function write(storage: TextStorage, rounds: readonly UnfinishedRound[]): void {
  if (rounds.length === 0) storage.remove(KEY);
  else storage.write(KEY, JSON.stringify(rounds));
}
