// Keeps the rooms at work here in step with what other servers write: by wake-ups, and by asking at short intervals.
import { CLOSE } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Undo, Wake, WakeBus } from '../ports.ts';
import { watchVersions } from '../store/version-watch.ts';
import type { LiveRoom } from './live.ts';

export interface FollowedRooms {
  readonly live: ReadonlyMap<string, LiveRoom>;
  /** The room is to be looked up anew the next time. */
  forget(code: string): void;
}

interface Ports {
  readonly bus: WakeBus;
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Log;
}

export function followOthers({ live, forget }: FollowedRooms, { bus, store, clock, log }: Ports): Undo {
  const catchUp = ({ code, seq }: Wake): void => {
    // What cannot be loaded now is found again by the next question.
    live
      .get(code)
      ?.room.catchUp(seq)
      .catch((error: unknown) => log.warn(errorFacts(error), 'a room could not catch up'));
  };
  const deaf = bus.subscribe(catchUp);
  const blind = watchVersions({
    store,
    clock,
    local: () => new Map([...live].map(([code, { room }]) => [code, room.state.seq])),
    behind: catchUp,
    gone(code) {
      const room = live.get(code);
      forget(code);
      void room?.stop();
      room?.table.endAll(CLOSE.goingAway);
    },
    reachable(yes) {
      if (yes) log.info({}, 'the store answers again');
      else log.error({}, 'the store is away');
      for (const { table } of live.values()) table.tellEverybody({ kind: 'keeping', keeps: yes });
    },
  });
  return () => {
    deaf();
    blind();
  };
}
