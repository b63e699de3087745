// The JSON of a class's events and snapshots, with schemas that read it back or fail.
import { z } from 'zod';
import {
  analyzedChoiceSchema,
  classTermsSchema,
  drillSchema,
  frozenSpreadSchema,
  seatSchema,
  shownStepSchema,
  stepSchema,
} from '../../shared-engine/index.ts';
import { UNUSED } from '../aggregate/allowance.ts';
import type { EventCodec } from '../aggregate/recorded.ts';
import { storedJson } from '../aggregate/stored-json.ts';
import { cardChoiceSchema, preparedDealSchema, resolvedSchema, usedSchema } from '../room/stored-round.ts';
import type { ClassEvent } from './event.ts';

const outcomes = z.array(resolvedSchema).readonly();
const shown = shownStepSchema.nullable();
const aim = {
  player: z.int(),
  deal: z.int(),
  step: stepSchema,
  sections: z.array(z.string()).readonly(),
};

const frozenStep = {
  deal: z.int(),
  seat: seatSchema,
  step: stepSchema,
  spreads: z.array(frozenSpreadSchema).readonly(),
};

const analyzed = z.record(z.string(), analyzedChoiceSchema);
const rounds = z
  .array(
    z.strictObject({
      player: z.int(),
      deal: z.int(),
      toGo: z.strictObject({ start: z.int(), end: z.int() }),
    }),
  )
  .readonly();

const classEvent = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('opened'),
    drill: drillSchema,
    deals: z.array(preparedDealSchema).readonly(),
    terms: classTermsSchema,
    card: cardChoiceSchema,
    secretHash: z.string(),
  }),
  z.strictObject({
    kind: z.literal('joined'),
    name: z.string(),
    secretHash: z.string(),
    room: z.string(),
    seat: seatSchema,
    first: z.int().min(0).exactOptional(),
  }),
  z.strictObject({ kind: z.literal('dealt') }),
  z.strictObject({ kind: z.literal('hold'), before: stepSchema.nullable() }),
  z.strictObject({ kind: z.literal('stand-in'), player: z.int(), on: z.boolean() }),
  z.strictObject({ kind: z.literal('shown'), shown }),
  z.strictObject({ kind: z.literal('advanced'), outcome: resolvedSchema, closed: z.boolean() }),
  z.strictObject({ kind: z.literal('aimed'), ...aim }),
  z.strictObject({ kind: z.literal('frozen'), ...frozenStep }),
  z.strictObject({ kind: z.literal('analyzed'), choices: analyzed, rounds }),
  z.strictObject({ kind: z.literal('key-made'), secretHash: z.string() }),
  z.strictObject({ kind: z.literal('key-revoked'), key: z.int() }),
  z.strictObject({ kind: z.literal('screen-code'), codeHash: z.string() }),
  z.strictObject({ kind: z.literal('screen-opened'), secretHash: z.string() }),
  z.strictObject({ kind: z.literal('left'), player: z.int() }),
  z.strictObject({ kind: z.literal('removed'), player: z.int() }),
  z.strictObject({ kind: z.literal('renamed'), player: z.int(), name: z.string() }),
  z.strictObject({ kind: z.literal('seated'), player: z.int(), room: z.string(), seat: seatSchema }),
  z.strictObject({ kind: z.literal('joining'), open: z.boolean() }),
  z.strictObject({ kind: z.literal('take-home'), on: z.boolean() }),
  z.strictObject({ kind: z.literal('ended') }),
]);

/** A class at any moment, without what its first event holds. */
const classSnapshot = z.strictObject({
  seq: z.int(),
  keys: z
    .array(z.strictObject({ id: z.int(), secretHash: z.string(), at: z.number(), isRevoked: z.boolean() }))
    .readonly()
    .default([]),
  screen: z
    .strictObject({
      codeHash: z.string().nullable(),
      opened: z.array(z.string()).readonly(),
      used: usedSchema,
    })
    .default({ codeHash: null, opened: [], used: UNUSED }),
  players: z
    .array(
      z.strictObject({
        id: z.int(),
        name: z.string(),
        secretHash: z.string(),
        room: z.string(),
        seat: seatSchema,
        standIn: z.boolean(),
        left: z.boolean(),
        removed: z.boolean(),
        replaced: z.boolean(),
        first: z.int(),
        aimsUsed: usedSchema,
        seatedAs: z.string().exactOptional(),
      }),
    )
    // A class stored before players could be given another name or place.
    .transform((players) => players.map((one) => ({ ...one, seatedAs: one.seatedAs ?? one.name })))
    .readonly(),
  tables: z.array(z.string()).readonly().exactOptional(),
  dealt: z.int(),
  outcomes,
  dealClosed: z.boolean(),
  outcomesBefore: z.array(outcomes).readonly(),
  holdBefore: stepSchema.nullable(),
  shown,
  aims: z.array(z.strictObject(aim)).readonly(),
  joiningOpen: z.boolean(),
  takeHome: z.boolean().exactOptional(),
  wasTakenHome: z.boolean().exactOptional(),
  cohorts: z.array(z.array(z.int()).readonly()).readonly(),
  frozen: z.array(z.strictObject(frozenStep)).readonly(),
  analyzed: analyzed.default({}),
  rounds: rounds.default([]),
  ended: z.boolean(),
});

/** Does not compile unless the schema covers every kind of event. */
export const classEvents: EventCodec<ClassEvent> = {
  textOf: (events: readonly z.infer<typeof classEvent>[]) => JSON.stringify(events),
  eventsFrom: (text) => storedJson(z.array(classEvent), text),
};

export type ClassSnapshot = z.infer<typeof classSnapshot>;

export function classSnapshotFrom(text: string): ClassSnapshot {
  return storedJson(classSnapshot, text);
}
