// Keeps what is active here in step with what other servers write: by wake-ups, and by asking at short intervals.
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Unsubscribe, Wake, WakeBus } from '../ports.ts';
import { watchVersions } from './version-watch.ts';

/** Rooms or classes by their code. */
export interface Following<Live> {
  readonly active: ReadonlyMap<string, Live>;
  logOf(live: Live): FollowedLog;
  /** It is stored no more. */
  removed(live: Live): void;
  /** The store answers again, or no longer; called at each change. */
  reachable?(yes: boolean): void;
}

interface FollowedLog {
  readonly state: { readonly seq: number };
  catchUp(version: number): Promise<void>;
}

interface Ports {
  readonly bus: WakeBus;
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  readonly log: Log;
}

export function followOthers<Live>(
  { active, logOf, removed, reachable = () => {} }: Following<Live>,
  { bus, store, clock, log }: Ports,
): Unsubscribe {
  const catchUp = ({ code, version }: Wake): void => {
    const live = active.get(code);
    if (live === undefined) return;
    // What cannot be loaded now is found again by the next question.
    logOf(live)
      .catchUp(version)
      .catch((error: unknown) =>
        log.warn(errorFacts(error), 'what another server wrote could not be loaded'),
      );
  };
  const stopListening = bus.subscribe(catchUp);
  const stopPolling = watchVersions({
    store,
    clock,
    active: () => new Map([...active].map(([code, live]) => [code, logOf(live).state.seq])),
    behind: catchUp,
    removed(code) {
      const live = active.get(code);
      if (live !== undefined) removed(live);
    },
    reachable,
  });
  return () => {
    stopListening();
    stopPolling();
  };
}
