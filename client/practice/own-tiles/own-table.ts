// What somebody has laid in so far: kept on this device, so that a closed page loses nothing.
import * as z from 'zod';
import {
  type AnswerChoice,
  choiceSchema,
  type Face,
  four,
  type LaidEntry,
  type LaidTable,
  layAll,
  STANDARD_TERMS,
  type Step,
  seatSchema,
  stepSchema,
  termsSchema,
  tilesSchema,
} from '../../../shared-engine/index.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import { OWN_SEAT } from './strings.ts';

export interface OwnTable {
  readonly table: LaidTable;
  /** The rack as dealt, as far as it is laid. */
  readonly tiles: readonly Face[];
  /** Whether the rack is whole and the exchange has begun. */
  readonly begun: boolean;
  readonly entries: readonly LaidEntry[];
  /** Steps for which the coach was asked, or how good a pass would be. */
  readonly helped: readonly Step[];
}

export const EMPTY_TABLE: OwnTable = {
  table: { seat: OWN_SEAT, dealer: OWN_SEAT, terms: STANDARD_TERMS.alone },
  tiles: [],
  begun: false,
  entries: [],
  helped: [],
};

const KEY = 'own-tiles';
const MAX_ENTRIES = 20;

const answerSchema = choiceSchema.transform((choice, { addIssue }): AnswerChoice => {
  if (choice.kind !== 'withdraw') return choice;
  addIssue('An answer withdraws nothing.');
  return z.NEVER;
});

const entrySchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('choice'), choice: answerSchema }),
  z.strictObject({ kind: z.literal('arrival'), tiles: tilesSchema, blind: four(z.int()) }),
  z.strictObject({ kind: z.literal('votes'), stopped: z.array(seatSchema).max(3).readonly() }),
  z.strictObject({ kind: z.literal('asks'), asked: four(z.int()) }),
]);

const ownTableSchema = z.strictObject({
  table: z.strictObject({ seat: z.literal(OWN_SEAT), dealer: seatSchema, terms: termsSchema }),
  tiles: tilesSchema,
  begun: z.boolean(),
  entries: z.array(entrySchema).max(MAX_ENTRIES).readonly(),
  helped: z.array(stepSchema).max(MAX_ENTRIES).readonly(),
});

/** An empty table where nothing is stored, or nothing that can be read. */
export function readOwnTable(storage: TextStorage): OwnTable {
  try {
    const stored = ownTableSchema.parse(JSON.parse(storage.read(KEY) ?? 'null'));
    const isWhole = !stored.begun || layAll(stored.table, stored.tiles, stored.entries).ok;
    return isWhole ? stored : EMPTY_TABLE;
  } catch {
    return EMPTY_TABLE;
  }
}

export function storeOwnTable(storage: TextStorage, own: OwnTable): void {
  storage.write(KEY, JSON.stringify(own));
}
