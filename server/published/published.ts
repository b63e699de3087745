// A published drill as an event-sourced aggregate: its pure functions, and where loading it may begin.
import type { Aggregate } from '../aggregate/aggregate.ts';
import type { AggregateType } from '../aggregate/type.ts';
import { decidePublished, type PublishedCommand } from './decide.ts';
import type { PublishedEvent } from './event.ts';
import { beginPublished, evolvePublished } from './evolve.ts';
import type { PublishedState } from './state.ts';
import { type PublishedSnapshot, publishedEvents, publishedSnapshotFrom } from './stored-event.ts';

export type PublishedAggregate = Aggregate<PublishedState, PublishedEvent, PublishedCommand>;

export const PUBLISHED: AggregateType<PublishedState, PublishedEvent, PublishedCommand> = {
  kinds: ['published'],
  codec: publishedEvents,
  decide: decidePublished,
  begin: beginPublished,
  evolve: evolvePublished,
  // Its state is never short: a snapshot is due when enough events lie behind the one before.
  startsAnew: () => false,
  snapshotOf: snapshotText,
  restore: (begun, text) => ({ ...begun, ...publishedSnapshotFrom(text) }),
};

function snapshotText({ drill, deals, terms, card, secretHash, ...rest }: PublishedState): string {
  const snapshot: PublishedSnapshot = rest;
  return JSON.stringify(snapshot);
}
