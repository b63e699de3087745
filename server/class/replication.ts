// Keeps the classes active here in step with what other servers write, as rooms are: by wake-ups, and by asking.
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Unsubscribe, Wake, WakeBus } from '../ports.ts';
import { watchVersions } from '../registry/version-watch.ts';
import type { ActiveClass } from './active-class.ts';

export interface FollowedClasses {
  readonly active: ReadonlyMap<string, ActiveClass>;
  /** The class is to be looked up anew the next time. */
  forget(code: string): void;
}

interface Ports {
  readonly bus: WakeBus;
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  readonly log: Log;
}

export function followClasses(
  { active, forget }: FollowedClasses,
  { bus, store, clock, log }: Ports,
): Unsubscribe {
  const catchUp = ({ code, version }: Wake): void => {
    const live = active.get(code);
    if (live === undefined || version <= live.state.seq) return;
    // What cannot be loaded now is found again by the next question.
    live
      .catchUp(version)
      .catch((error: unknown) => log.warn(errorFacts(error), 'a class could not catch up'));
  };
  const stopListening = bus.subscribe(catchUp);
  const stopPolling = watchVersions({
    store,
    clock,
    active: () => new Map([...active].map(([code, { state }]) => [code, state.seq])),
    behind: catchUp,
    removed(code) {
      const live = active.get(code);
      forget(code);
      live?.stop();
    },
    // The rooms of this server say it.
    reachable() {},
  });
  return () => {
    stopListening();
    stopPolling();
  };
}
