// The safety net under the wake-ups: asks the store at short intervals which rooms have moved on without us.
import type { Clock, Store, Undo, Wake } from '../ports.ts';

/** Pause between two questions, in milliseconds. */
export const WATCH_MS = 250;

export interface VersionWatch {
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  /** The rooms at work here, each with the number of its last event. */
  local(): ReadonlyMap<string, number>;
  /** A room has gone on elsewhere up to this event. */
  behind(wake: Wake): void;
  /** A room at work here is no longer kept. */
  gone(code: string): void;
  /** The store answers again, or no longer; told at each change. */
  reachable(yes: boolean): void;
}

/** Never asks twice at once, and asks nothing while no room is at work. */
export function watchVersions({ store, clock, local, behind, gone, reachable }: VersionWatch): Undo {
  let stopped = false;
  let answered = true;
  let callOff = clock.after(WATCH_MS, look);

  function look(): void {
    void ask().finally(() => {
      if (!stopped) callOff = clock.after(WATCH_MS, look);
    });
  }

  async function ask(): Promise<void> {
    const rooms = local();
    // While the store is away it is asked even for nothing, or nobody would learn that it is back.
    if (rooms.size === 0 && answered) return;
    const kept = await store.versions([...rooms.keys()]).catch(() => null);
    if (stopped) return;
    if ((kept !== null) !== answered) {
      answered = kept !== null;
      reachable(answered);
    }
    if (kept === null) return;
    for (const [code, known] of rooms) {
      const seq = kept.get(code);
      if (seq === undefined) gone(code);
      else if (seq > known) behind({ code, seq });
    }
  }

  return () => {
    stopped = true;
    callOff();
  };
}
