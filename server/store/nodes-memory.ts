// Which servers run, where all of them are in one process: any other that has written to the store has ended.

import type { Entropy, Nodes } from '../ports.ts';
import { newSecret } from '../secrets.ts';

/** For a store that one server has to itself. */
export function onlyNode(entropy: Entropy): Nodes {
  return memoryNodes(entropy).join();
}

/** Every server that joins knows which of the others have closed. */
export function memoryNodes(entropy: Entropy): { join(): Nodes } {
  const running = new Set<string>();
  return {
    join() {
      const id = newSecret(entropy).slice(0, 12);
      running.add(id);
      return {
        id,
        gone: async (ids) => ids.filter((other) => !running.has(other)),
        async close() {
          running.delete(id);
        },
      };
    },
  };
}
