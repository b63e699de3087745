// The store in memory: the twin that every other store is checked against, and enough for one process.

import type { Store } from '../ports.ts';
import type { Logged } from '../room/event.ts';

export function memoryStore(): Store {
  const logs = new Map<string, Logged[]>();
  return {
    async create(code, log) {
      if (logs.has(code)) return 'code-taken';
      logs.set(code, [...log]);
      return 'kept';
    },
    async append(code, after, log) {
      const kept = logs.get(code);
      if (kept?.at(-1)?.seq !== after) return 'conflict';
      kept.push(...log);
      return 'kept';
    },
    async load(code) {
      const kept = logs.get(code);
      return kept ? [...kept] : null;
    },
    async remove(code) {
      logs.delete(code);
    },
    async count() {
      return logs.size;
    },
    async close() {},
  };
}
