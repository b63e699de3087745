// A store that tells the other servers of every write, when it is kept and not before.
import type { Store, WakeBus } from '../ports.ts';

export function announcing(store: Store, bus: WakeBus): Store {
  return {
    ...store,
    async append(code, after, log) {
      const outcome = await store.append(code, after, log);
      if (outcome === 'kept') bus.publish({ code, seq: after + log.length });
      return outcome;
    },
  };
}
