// What one audience has missed: the parts of its table that are other than they were.
import type { Table, TableNews } from '../../shared-engine/index.ts';

/** Both tables were built for the same audience, so their difference says nothing that it may not know. */
export function newsBetween(before: Table, now: Table): TableNews {
  return {
    // Time runs without an event.
    remaining: now.remaining,
    ...(isSame(before.you, now.you) ? {} : { you: now.you }),
    ...(isSame(before.seats, now.seats) ? {} : { seats: now.seats }),
    ...(isSame(before.round, now.round) ? {} : { round: now.round }),
    ...(now.led && !isSame(before.led, now.led) ? { led: now.led } : {}),
    ...(isSame(before.view, now.view) ? {} : { view: now.view }),
  };
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
