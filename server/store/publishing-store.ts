// A store that tells the other servers of every append, when it is committed and not before.
import type { Store, WakeBus } from '../ports.ts';

export function publishingStore(store: Store, bus: WakeBus): Store {
  return {
    ...store,
    async commit(batch) {
      const outcomes = await store.commit(batch);
      for (const [n, { code, row }] of batch.entries()) {
        if (outcomes[n] === 'committed') bus.publish({ code, version: row.version });
      }
      return outcomes;
    },
  };
}
