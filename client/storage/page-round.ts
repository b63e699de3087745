// The round on a table in the page, stored as one's own answers: with deal, bots and card it plays out again to the same state.
import * as z from 'zod';
import {
  type Choice,
  choiceSchema,
  type Deal,
  hexSchema,
  type Seat,
  STYLES,
  type StyleName,
  seatSchema,
  type Terms,
  termsSchema,
} from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

export interface PageRound {
  readonly deal: Deal;
  readonly seat: Seat;
  /** Number of the deal at this table, from 1. */
  readonly number: number;
  /** How the three bots pass. */
  readonly style: StyleName;
  readonly terms: Terms;
  /** Id of the card. */
  readonly card: string;
  readonly answers: readonly Choice[];
}

const KEY = 'page-round';

const pageRoundSchema: z.ZodType<PageRound> = z.strictObject({
  deal: z.strictObject({ seed: hexSchema, dealer: seatSchema }),
  seat: seatSchema,
  number: z.int().min(1),
  style: z.enum(STYLES),
  terms: termsSchema,
  card: z.string(),
  answers: z.array(choiceSchema).max(20).readonly(),
});

/** One round at a time: that of the table last played at. */
export function storePageRound(storage: TextStorage, round: PageRound): void {
  storage.write(KEY, JSON.stringify(round));
}

/** The next play of the deal begins anew. */
export function forgetPageRound(storage: TextStorage): void {
  storage.remove(KEY);
}

/** Null unless the round stored is that of this deal and seat. */
export function readPageRound(storage: TextStorage, deal: Deal, seat: Seat): PageRound | null {
  const parsed = pageRoundSchema.safeParse(jsonOf(storage.read(KEY)));
  if (!parsed.success) return null;
  const stored = parsed.data;
  const isSame = stored.deal.seed === deal.seed && stored.deal.dealer === deal.dealer && stored.seat === seat;
  return isSame ? stored : null;
}

function jsonOf(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
