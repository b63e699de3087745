// From a stored log to the state it leads to.
import type { StoredLog } from '../ports.ts';
import { type Recorded, recordedIn } from './recorded.ts';
import type { AggregateType, Versioned } from './type.ts';

export interface Replayed<State> {
  /** The states after the snapshot or the first event and after each row behind that; the last one is the latest. */
  readonly states: readonly [State, ...State[]];
  /** Ids of the accepted commands that may still be repeated, oldest first. */
  readonly commands: readonly string[];
}

type Replay<State extends Versioned, Event> = Pick<
  AggregateType<State, Event, never>,
  'kinds' | 'codec' | 'begin' | 'evolve' | 'restore'
>;

/** Null where the log is of another kind. Throws where it cannot be read. */
export function replay<State extends Versioned, Event>(
  type: Replay<State, Event>,
  { kind, snapshot, rows }: StoredLog,
): Replayed<State> | null {
  if (!type.kinds.includes(kind)) return null;
  const [first] = rows;
  const begun = first ? type.begin(recordedIn(first, type.codec)[0]!) : null;
  if (begun === null) throw new Error('A stored log does not begin with its opening.');
  let state = snapshot ? type.restore(begun, snapshot.state) : begun;
  const states: [State, ...State[]] = [state];
  for (const row of rows) {
    if (row.version <= state.seq) continue;
    state = evolveAll(type, state, recordedIn(row, type.codec));
    states.push(state);
  }
  const commands = [...(snapshot?.commands ?? []), ...rows.flatMap((row) => row.commands)];
  return { states, commands };
}

/** Leaves out the events that are in the state already. */
export function evolveAll<State extends Versioned, Event>(
  type: Pick<AggregateType<State, Event, never>, 'evolve'>,
  state: State,
  recorded: readonly Recorded<Event>[],
): State {
  let now = state;
  for (const one of recorded) if (one.seq > now.seq) now = type.evolve(now, one);
  return now;
}
