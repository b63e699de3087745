// A store that measures how long it takes for what it is asked, and counts what fails.
import type { Measurements, Store } from '../ports.ts';

export function measuredStore(store: Store, { storeAsked }: Pick<Measurements, 'storeAsked'>): Store {
  function measured<Args extends unknown[], Result>(
    operation: keyof Store,
    ask: (...args: Args) => Promise<Result>,
  ): (...args: Args) => Promise<Result> {
    return async (...args) => {
      const answered = storeAsked(operation);
      try {
        const result = await ask(...args);
        answered('done');
        return result;
      } catch (error) {
        answered('failed');
        throw error;
      }
    };
  }

  return {
    create: measured('create', store.create),
    commit: measured('commit', store.commit),
    load: measured('load', store.load),
    loadAfter: measured('loadAfter', store.loadAfter),
    history: measured('history', store.history),
    versions: measured('versions', store.versions),
    codes: measured('codes', store.codes),
    rewrite: measured('rewrite', store.rewrite),
    remove: measured('remove', store.remove),
    removeOlder: measured('removeOlder', store.removeOlder),
    removeBeyond: measured('removeBeyond', store.removeBeyond),
    count: measured('count', store.count),
    checkWritable: measured('checkWritable', store.checkWritable),
    close: store.close,
  };
}
