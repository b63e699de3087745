// What the commands that wait at one aggregate come to, if no other server is quicker.
import type { LogRow, Snapshot } from '../ports.ts';
import { ACCEPTED, type Answer, isFinal } from './decision.ts';
import type { IdempotencyCache } from './idempotency-cache.ts';
import { MAX_BEHIND_SNAPSHOT } from './log-limits.ts';
import { type Recorded, record, rowOf } from './recorded.ts';
import type { AggregateType, Versioned } from './type.ts';

/** A command that waits for its answer. */
export interface Job<Command> {
  readonly command: Command;
  /** Names the command for good; null where repeating it does no harm. */
  readonly id: string | null;
  /** How often another server was quicker. */
  readonly attempts: number;
  readonly answer: (answer: Answer) => void;
}

export interface Plan<State, Event, Command> {
  readonly jobs: readonly Job<Command>[];
  /** One for each job, good as soon as the row is stored. */
  readonly answers: readonly Answer[];
  readonly recorded: readonly Recorded<Event>[];
  /** After all these events. */
  readonly state: State;
  /** Null where there is no event. */
  readonly append: { readonly row: LogRow; readonly snapshot: Snapshot | null } | null;
}

interface Situation<State, Command> {
  readonly state: State;
  readonly cache: IdempotencyCache;
  /** Number of the event at which loading would begin now. */
  readonly loadsFrom: number;
  readonly jobs: readonly Job<Command>[];
  /** The time of the events. */
  readonly at: number;
}

/** Decides each command on the state as those before it leave it. */
export function planJobs<State extends Versioned, Event, Command>(
  type: AggregateType<State, Event, Command>,
  { state: before, cache, loadsFrom, jobs, at }: Situation<State, Command>,
): Plan<State, Event, Command> {
  let state = before;
  let snapshot: Omit<Snapshot, 'commands'> | null = null;
  const answers: Answer[] = [];
  const recorded: Recorded<Event>[] = [];
  const fresh = new Map<string, Answer>();
  const commands: string[] = [];
  for (const { command, id } of jobs) {
    const known = id === null ? undefined : (cache.get(id) ?? fresh.get(id));
    if (known !== undefined) {
      answers.push(known);
      continue;
    }
    const decision = type.decide(state, command, at);
    const events = decision.ok ? decision.events : [];
    for (const one of record(events, { after: state.seq, at })) {
      state = type.evolve(state, one);
      recorded.push(one);
      if (type.startsAnew(one.event)) snapshot = snapshotAt(type, state) ?? snapshot;
    }
    const answer = decision.ok ? ACCEPTED : decision;
    if (id !== null && isFinal(answer)) fresh.set(id, answer);
    if (id !== null && events.length > 0) commands.push(id);
    answers.push(answer);
  }
  if (recorded.length === 0) return { jobs, answers, recorded, state, append: null };
  const behind = state.seq - (snapshot?.version ?? loadsFrom);
  if (behind >= MAX_BEHIND_SNAPSHOT) snapshot = snapshotAt(type, state) ?? snapshot;
  const row = rowOf(recorded, commands, type.codec);
  const withCommands = snapshot && { ...snapshot, commands: [...cache.accepted(), ...commands] };
  return { jobs, answers, recorded, state, append: { row, snapshot: withCommands } };
}

function snapshotAt<State extends Versioned, Event, Command>(
  type: AggregateType<State, Event, Command>,
  state: State,
): Omit<Snapshot, 'commands'> | null {
  const text = type.snapshotOf(state);
  return text === null ? null : { version: state.seq, state: text };
}
