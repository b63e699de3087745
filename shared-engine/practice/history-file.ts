// The file in which somebody takes a history to another device: one JSON object a line, the first one counting the rest.
import { z } from 'zod';
import { cardFileSchema } from '../card/index.ts';
import { hexSchema } from '../rules/index.ts';
import { type Schedule, scheduleSchema } from './exercise.ts';
import { roundDetailSchema, roundSummarySchema, type StoredRound } from './stored-round.ts';

const FORMAT = 'quadrille-history';
const VERSION = 1;

/** Ten thousand rounds take less. */
export const MAX_HISTORY_BYTES = 100_000_000;

const headSchema = z.object({ format: z.literal(FORMAT), version: z.int().min(1) });
const firstLineSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  cards: z.int().min(0).max(10_000),
  rounds: z.int().min(0).max(100_000),
  schedules: z.int().min(0).max(1_000_000),
});

/** A card as it was when a round was played on it, stored once for all its rounds. */
export const storedCardSchema = z.strictObject({ hash: hexSchema, file: cardFileSchema });
export type StoredCard = z.infer<typeof storedCardSchema>;

/** One of them a line, told apart by its field before it is checked, because that is done thousands of times. */
const cardLine = z.strictObject({ card: storedCardSchema });
const scheduleLine = z.strictObject({ schedule: scheduleSchema });
const roundLine = z.strictObject({ summary: roundSummarySchema, detail: roundDetailSchema });

export interface History {
  readonly cards: readonly StoredCard[];
  readonly rounds: readonly StoredRound[];
  /** Of the exercises that were answered at least once. */
  readonly schedules: readonly Schedule[];
}

/** Why a file is not taken; nothing of it has been stored then. */
export type HistoryFileProblem =
  /** Not a history, or of a version that this page does not know yet. */
  | { readonly code: 'foreign' | 'later' }
  /** It ends before everything that its first line counts. */
  | { readonly code: 'torn' }
  | { readonly code: 'too-large' }
  | { readonly code: 'damaged'; readonly line: number };

export type HistoryRead =
  | { readonly ok: true; readonly history: History }
  | { readonly ok: false; readonly problem: HistoryFileProblem };

/** Line by line, each ending with a line feed. */
export function* historyLines({ cards, rounds, schedules }: History): Generator<string> {
  const counts = { cards: cards.length, rounds: rounds.length, schedules: schedules.length };
  const first = { format: FORMAT, version: VERSION, ...counts };
  yield `${JSON.stringify(first)}\n`;
  for (const card of cards) yield `${JSON.stringify({ card })}\n`;
  for (const schedule of schedules) yield `${JSON.stringify({ schedule })}\n`;
  for (const { summary, detail } of rounds) yield `${JSON.stringify({ summary, detail })}\n`;
}

export interface HistoryReader {
  /** Takes the next line; returns what is wrong with it, or null. */
  take(line: string): HistoryFileProblem | null;
  /** After the last line. */
  end(): HistoryRead;
}

export function historyReader(): HistoryReader {
  const cards: StoredCard[] = [];
  const rounds: StoredRound[] = [];
  const schedules: Schedule[] = [];
  let counts: z.infer<typeof firstLineSchema> | null = null;
  let taken = 0;

  function takeFirst(json: unknown): HistoryFileProblem | null {
    const head = headSchema.safeParse(json);
    if (!head.success) return { code: 'foreign' };
    if (head.data.version > VERSION) return { code: 'later' };
    const first = firstLineSchema.safeParse(json);
    if (!first.success) return { code: 'damaged', line: 1 };
    counts = first.data;
    return null;
  }

  function takeLine(json: unknown): boolean {
    if (typeof json !== 'object' || json === null) return false;
    if ('card' in json) return added(cards, cardLine.safeParse(json).data?.card);
    if ('schedule' in json) return added(schedules, scheduleLine.safeParse(json).data?.schedule);
    const round = roundLine.safeParse(json).data;
    return added(rounds, round && round.summary.id === round.detail.id ? round : undefined);
  }

  return {
    take(text) {
      taken++;
      const json = jsonOf(text);
      if (counts === null) return takeFirst(json);
      // A line that is cut off is the last one of a torn file; within a file it is damage.
      if (json === undefined) return { code: text.endsWith('}') ? 'damaged' : 'torn', line: taken };
      return takeLine(json) ? null : { code: 'damaged', line: taken };
    },
    end() {
      if (counts === null) return { ok: false, problem: { code: 'foreign' } };
      const whole =
        cards.length === counts.cards &&
        rounds.length === counts.rounds &&
        schedules.length === counts.schedules;
      return whole
        ? { ok: true, history: { cards, rounds, schedules } }
        : { ok: false, problem: { code: 'torn' } };
    },
  };
}

/** Adds what there is; false where there is nothing. */
function added<T>(items: T[], item: T | undefined): boolean {
  if (item !== undefined) items.push(item);
  return item !== undefined;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
