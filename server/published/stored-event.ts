// The JSON of a published drill's events and snapshots, with schemas that read it back or fail.
import { z } from 'zod';
import {
  analyzedChoiceSchema,
  drillSchema,
  publishedTermsSchema,
  stepSchema,
} from '../../shared-engine/index.ts';
import type { EventCodec } from '../aggregate/recorded.ts';
import { storedJson } from '../aggregate/stored-json.ts';
import { cardChoiceSchema, preparedDealSchema } from '../room/stored-round.ts';
import type { PublishedEvent } from './event.ts';

const choices = z.partialRecord(stepSchema, z.string());
const questions = z.array(z.strictObject({ step: stepSchema, text: z.string() })).readonly();
const spreads = z
  .array(
    z.strictObject({
      step: stepSchema,
      kind: z.enum(['pass', 'blind', 'vote', 'ask']),
      cells: z.array(z.tuple([z.string(), z.int()]).readonly()).readonly(),
      other: z.int(),
    }),
  )
  .readonly();
const analyzed = z.record(z.string(), analyzedChoiceSchema);

const publishedEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('published'),
    drill: drillSchema,
    deals: z.array(preparedDealSchema).readonly(),
    terms: publishedTermsSchema,
    until: z.int(),
    card: cardChoiceSchema,
    secretHash: z.string(),
  }),
  z.strictObject({
    kind: z.literal('counted'),
    player: z.string(),
    id: z.string(),
    deal: z.int(),
    choices,
    questions: questions.exactOptional(),
    unasked: z.literal(true).exactOptional(),
    name: z.string().exactOptional(),
  }),
  z.strictObject({
    kind: z.literal('released'),
    deal: z.int(),
    through: z.int(),
    taken: z.array(stepSchema).readonly(),
    spreads,
    questions,
  }),
  z.strictObject({ kind: z.literal('analyzed'), choices: analyzed }),
  z.strictObject({ kind: z.literal('extended'), until: z.int() }),
  z.strictObject({ kind: z.literal('withdrawn') }),
  z.strictObject({ kind: z.literal('forgotten'), player: z.string() }),
  z.strictObject({ kind: z.literal('key-made'), secretHash: z.string() }),
  z.strictObject({ kind: z.literal('key-revoked'), key: z.int() }),
]);

const stepCounts = z.partialRecord(stepSchema, z.record(z.string(), z.int()));

/** A published drill at any moment, without what its first event holds. */
const publishedSnapshot = z.strictObject({
  seq: z.int(),
  until: z.int(),
  isWithdrawn: z.boolean(),
  keys: z
    .array(z.strictObject({ id: z.int(), secretHash: z.string(), at: z.number(), isRevoked: z.boolean() }))
    .readonly(),
  rounds: z.int(),
  asked: z.int(),
  unasked: z.array(z.string()).readonly(),
  players: z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))),
  byDeal: z
    .array(
      z.strictObject({
        told: stepCounts,
        held: stepCounts,
        through: z.int(),
        waiting: z.array(choices).readonly(),
        waitingQuestions: questions,
        spreads,
        questions,
        names: z.record(z.string(), z.string()),
      }),
    )
    .readonly(),
  analyzed,
});

/** Does not compile unless the schema covers every kind of event. */
export const publishedEvents: EventCodec<PublishedEvent> = {
  textOf: (events: readonly z.infer<typeof publishedEvent>[]) => JSON.stringify(events),
  eventsFrom: (text) => storedJson(z.array(publishedEvent), text),
};

export type PublishedSnapshot = z.infer<typeof publishedSnapshot>;

export function publishedSnapshotFrom(text: string): PublishedSnapshot {
  return storedJson(publishedSnapshot, text);
}
