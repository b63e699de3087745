// The safety net under the wake-ups: asks the store at short intervals which logs have grown without us.
import type { Cancel, Clock, Store, Unsubscribe, Wake } from '../ports.ts';

/** Pause between two questions, in milliseconds. */
export const POLL_MS = 250;

export interface VersionWatch {
  readonly store: Pick<Store, 'versions'>;
  readonly clock: Clock;
  /** The rooms active here, each with the number of its last event. */
  active(): ReadonlyMap<string, number>;
  /** A room has gone on elsewhere up to this event. */
  behind(wake: Wake): void;
  /** A room that is active here is no longer stored. */
  removed(code: string): void;
  /** The store answers again, or no longer; called at each change. */
  reachable(yes: boolean): void;
}

/** Never asks twice at once, and asks nothing while no room is active. */
export function watchVersions({
  store,
  clock,
  active,
  behind,
  removed,
  reachable,
}: VersionWatch): Unsubscribe {
  let stopped = false;
  let answered = true;
  let cancel: Cancel = clock.after(POLL_MS, poll);

  function poll(): void {
    void ask().finally(() => {
      if (!stopped) cancel = clock.after(POLL_MS, poll);
    });
  }

  async function ask(): Promise<void> {
    const rooms = active();
    // While the store is away it is asked even for nothing, or nobody would learn that it is back.
    if (rooms.size === 0 && answered) return;
    const stored = await store.versions([...rooms.keys()]).catch(() => null);
    if (stopped) return;
    if ((stored !== null) !== answered) {
      answered = stored !== null;
      reachable(answered);
    }
    if (stored === null) return;
    for (const [code, known] of rooms) {
      const version = stored.get(code);
      if (version === undefined) removed(code);
      else if (version > known) behind({ code, version });
    }
  }

  return () => {
    stopped = true;
    cancel();
  };
}
