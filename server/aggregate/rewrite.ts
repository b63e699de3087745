// Changes what a stored log says of a person, in its rows and in its snapshot, without changing what happened.
import type { Store } from '../ports.ts';
import { type EventCodec, type Recorded, recordedIn } from './recorded.ts';

export interface Rewriting<Event> {
  readonly codec: EventCodec<Event>;
  /** Of all these events, those to be put in the place of the ones with their numbers. */
  changed(recorded: readonly Recorded<Event>[]): readonly Recorded<Event>[];
  /** The state to be put in the place of the snapshot's, both as JSON text. */
  snapshot(state: string): string;
}

/** Rejects when the store cannot be reached; it may then be asked again. */
export async function rewriteLog<Event>(
  store: Pick<Store, 'history' | 'rewrite'>,
  code: string,
  { codec, changed, snapshot }: Rewriting<Event>,
): Promise<void> {
  const log = await store.history(code);
  if (log === null) return;
  const rows = log.rows.map((row) => ({ row, recorded: recordedIn(row, codec) }));
  const fresh = new Map(
    changed(rows.flatMap(({ recorded }) => recorded)).map(({ seq, event }) => [seq, event]),
  );
  const rewritten = rows.flatMap(({ row, recorded }) => {
    if (!recorded.some(({ seq }) => fresh.has(seq))) return [];
    return [{ ...row, events: codec.textOf(recorded.map(({ seq, event }) => fresh.get(seq) ?? event)) }];
  });
  await store.rewrite(
    code,
    rewritten,
    log.snapshot && { ...log.snapshot, state: snapshot(log.snapshot.state) },
  );
}
