// The round on a table in the page, stored as one's own answers: with deal, bots and card it plays out again to the same state.
import * as z from 'zod';
import {
  type Choice,
  choiceSchema,
  type Deal,
  four,
  hexSchema,
  type Resolved,
  resolvedSchema,
  type Seat,
  STYLES,
  type StyleName,
  seatSchema,
  type Terms,
  termsSchema,
  tilesSchema,
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
  /** Since the deal, or since the steps in `outcomes`. */
  readonly answers: readonly Choice[];
  /** The steps that were over when a round of the server went on here; missing where it was dealt here. */
  readonly outcomes?: readonly Resolved[];
}

const KEY = 'page-round';

export const pageRoundSchema: z.ZodType<PageRound> = z.strictObject({
  deal: z.strictObject({
    seed: hexSchema,
    dealer: seatSchema,
    prepared: four(tilesSchema).exactOptional(),
  }),
  seat: seatSchema,
  number: z.int().min(1),
  style: z.enum(STYLES),
  terms: termsSchema,
  card: z.string(),
  answers: z.array(choiceSchema).max(20).readonly(),
  outcomes: z.array(resolvedSchema).max(9).readonly().exactOptional(),
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

export function jsonOf(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
