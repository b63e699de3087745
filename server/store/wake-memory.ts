// Wake-ups inside one process: the twin of the one that reaches other servers.
import type { Wake, WakeBus } from '../ports.ts';

/** Every bus that joins one hub hears what any of them publishes, in a later turn as over a network. */
export interface WakeHub {
  join(): WakeBus;
}

export function memoryWakeHub(): WakeHub {
  const members = new Set<(wake: Wake) => void>();
  return {
    join() {
      const listeners = new Set<(wake: Wake) => void>();
      const hear = (wake: Wake) => {
        for (const listener of listeners) listener(wake);
      };
      members.add(hear);
      return {
        publish(wake) {
          if (!members.has(hear)) return;
          queueMicrotask(() => {
            for (const member of members) member(wake);
          });
        },
        subscribe(listener) {
          listeners.add(listener);
          return () => listeners.delete(listener);
        },
        async close() {
          members.delete(hear);
        },
      };
    },
  };
}
