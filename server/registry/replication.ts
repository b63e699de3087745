// Keeps the rooms active here in step with what other servers write: by wake-ups, and by asking at short intervals.
import { CLOSE } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Unsubscribe, Wake, WakeBus } from '../ports.ts';
import type { ActiveRoom } from './active-room.ts';
import { watchVersions } from './version-watch.ts';

export interface FollowedRooms {
  readonly active: ReadonlyMap<string, ActiveRoom>;
  /** The room is to be looked up anew the next time. */
  forget(code: string): void;
}

interface Ports {
  readonly bus: WakeBus;
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  readonly log: Log;
}

export function followOthers(
  { active, forget }: FollowedRooms,
  { bus, store, clock, log }: Ports,
): Unsubscribe {
  const catchUp = ({ code, version }: Wake): void => {
    // What cannot be loaded now is found again by the next question.
    active
      .get(code)
      ?.room.catchUp(version)
      .catch((error: unknown) => log.warn(errorFacts(error), 'a room could not catch up'));
  };
  const stopListening = bus.subscribe(catchUp);
  const stopPolling = watchVersions({
    store,
    clock,
    active: () => new Map([...active].map(([code, { room }]) => [code, room.state.seq])),
    behind: catchUp,
    removed(code) {
      const live = active.get(code);
      forget(code);
      void live?.stop();
      live?.broadcaster.endAll(CLOSE.goingAway);
    },
    reachable(yes) {
      if (yes) log.info({}, 'the store answers again');
      else log.error({}, 'the store is away');
      for (const { broadcaster } of active.values()) {
        broadcaster.sendToAll({ kind: 'storage', writable: yes });
      }
    },
  });
  return () => {
    stopListening();
    stopPolling();
  };
}
