// Stores for tests: opened, or the test fails with the sentence.
import type { Store } from '../../server/ports.ts';
import type { OpenedStore } from '../../server/store/opened.ts';

export function storeOf(opened: OpenedStore): Store {
  if (!opened.ok) throw new Error(opened.message);
  return opened.store;
}
