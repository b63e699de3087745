// A club's page as an event-sourced aggregate: its pure functions, and the JSON of its events and snapshots.
import { z } from 'zod';
import type { Aggregate } from '../aggregate/aggregate.ts';
import type { EventCodec } from '../aggregate/recorded.ts';
import { storedJson } from '../aggregate/stored-json.ts';
import type { AggregateType } from '../aggregate/type.ts';
import { usedSchema } from '../room/stored-round.ts';
import { type ClubCommand, decideClub } from './decide.ts';
import { beginClub, type ClubEvent, type ClubState, evolveClub } from './state.ts';

const clubEvent = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('club-made'), name: z.string(), secretHash: z.string() }),
  z.strictObject({ kind: z.literal('club-renamed'), name: z.string() }),
  z.strictObject({ kind: z.literal('drill-shown'), code: z.string().nullable() }),
  z.strictObject({ kind: z.literal('table-listed'), table: z.string() }),
  z.strictObject({ kind: z.literal('tables-taken-off'), tables: z.array(z.string()).readonly() }),
  z.strictObject({ kind: z.literal('table-kept-off'), table: z.string() }),
  z.strictObject({ kind: z.literal('table-let-back'), table: z.string() }),
  z.strictObject({ kind: z.literal('key-made'), secretHash: z.string() }),
  z.strictObject({ kind: z.literal('key-revoked'), key: z.int() }),
]);

/** A page at any moment, without the secret that its first event holds. */
const clubSnapshot = z.strictObject({
  seq: z.int(),
  name: z.string(),
  keys: z
    .array(z.strictObject({ id: z.int(), secretHash: z.string(), at: z.number(), isRevoked: z.boolean() }))
    .readonly(),
  drill: z.string().nullable(),
  tables: z.array(z.string()).readonly(),
  keptOff: z.array(z.string()).readonly(),
  listings: usedSchema,
  changes: usedSchema,
});
type ClubSnapshot = z.infer<typeof clubSnapshot>;

/** Does not compile unless the schema covers every kind of event. */
export const clubEvents: EventCodec<ClubEvent> = {
  textOf: (events: readonly z.infer<typeof clubEvent>[]) => JSON.stringify(events),
  eventsFrom: (text) => storedJson(z.array(clubEvent), text),
};

export type ClubAggregate = Aggregate<ClubState, ClubEvent, ClubCommand>;

export const CLUB: AggregateType<ClubState, ClubEvent, ClubCommand> = {
  kinds: ['club'],
  codec: clubEvents,
  decide: decideClub,
  begin: beginClub,
  evolve: evolveClub,
  // A snapshot is due when enough events lie behind the one before.
  startsAnew: () => false,
  snapshotOf: snapshotText,
  restore: (begun, text) => ({ ...begun, ...storedJson(clubSnapshot, text) }),
};

function snapshotText({ secretHash, ...rest }: ClubState): string {
  const snapshot: ClubSnapshot = rest;
  return JSON.stringify(snapshot);
}
