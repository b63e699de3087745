// A new room or class in the store, under a code that nobody else has.
import type { AggregateKind, Clock, Entropy, Store } from '../ports.ts';
import { newCode } from '../secrets.ts';
import { record, rowOf } from './recorded.ts';
import type { AggregateType, Versioned } from './type.ts';

/** How often a code is drawn anew because it is in use; with 8 × 10¹¹ codes once is already rare. */
const MAX_DRAWS = 5;

interface Ports {
  readonly store: Pick<Store, 'create'>;
  readonly clock: Clock;
  readonly entropy: Entropy;
}

/** Its code, or null where none was free. Rejects when the store cannot be reached. */
export async function create<State extends Versioned, Event, Command>(
  { codec }: AggregateType<State, Event, Command>,
  events: readonly Event[],
  { store, clock, entropy }: Ports,
  kind: AggregateKind,
): Promise<string | null> {
  const row = rowOf(record(events, { after: 0, at: clock.now() }), [], codec);
  for (let draw = 0; draw < MAX_DRAWS; draw++) {
    const code = newCode(entropy);
    if ((await store.create(code, { kind, snapshot: null, rows: [row] })) === 'created') return code;
  }
  return null;
}
