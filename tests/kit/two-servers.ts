// Two servers on one store, as two machines on one database, with wake-ups and a store that may fail.
import type { Store } from '../../server/ports.ts';
import { memoryStore } from '../../server/store/memory.ts';
import { memoryNodes } from '../../server/store/nodes-memory.ts';
import { publishingStore } from '../../server/store/publishing-store.ts';
import { memoryWakeHub } from '../../server/store/wake-memory.ts';
import { FakeClock } from './clock.ts';
import { seededEntropy, startServer, type TestServerOptions } from './server.ts';

export interface Faults {
  /** Wake-ups are lost. */
  deaf?: boolean;
  away?: boolean;
}

/** They share rooms and clock; whoever starts them stops them. */
export async function startTwoServers(
  faults: Faults = {},
  options: Pick<TestServerOptions, 'analyzer' | 'pageFolder'> = {},
) {
  const rooms = memoryStore();
  const clock = new FakeClock();
  const hub = memoryWakeHub();
  const nodes = memoryNodes(seededEntropy('nodes'));
  const servers = await Promise.all(
    ['first', 'second'].map((seed) => {
      const bus = hub.join();
      const lossy = {
        ...bus,
        publish: (wake: Parameters<typeof bus.publish>[0]) => faults.deaf || bus.publish(wake),
      };
      const checked: Store = {
        ...rooms,
        commit: (...args) => (faults.away ? Promise.reject(new Error('away')) : rooms.commit(...args)),
        versions: (...args) => (faults.away ? Promise.reject(new Error('away')) : rooms.versions(...args)),
      };
      const store = publishingStore(checked, lossy);
      return startServer({ seed, clock, bus, nodes: nodes.join(), store, ...options });
    }),
  );
  const [here, there] = [servers[0]!, servers[1]!];
  return { here, there, rooms, clock };
}
