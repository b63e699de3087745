// The store in memory: the twin that every other store is checked against, and enough for one process.
import type { Store } from '../ports.ts';
import type { Logged } from '../room/event.ts';
import { byBytes, checkNumbers, commandsOf } from './row.ts';

/** What outlives a store in memory: hand it to the next one and the rooms are there again. */
export type MemoryPlace = Map<string, readonly Logged[]>;

export function memoryStore(place: MemoryPlace = new Map()): Store {
  let closed = false;

  function rooms(): MemoryPlace {
    if (closed) throw new Error('The store is closed.');
    return place;
  }

  return {
    async create(code, log) {
      checkNumbers(0, log);
      if (rooms().has(code)) return 'code-taken';
      rooms().set(code, [...log]);
      return 'kept';
    },
    async append(code, after, log) {
      checkNumbers(after, log);
      const kept = rooms().get(code);
      if (kept?.at(-1)?.seq !== after) return 'conflict';
      const known = new Set(commandsOf(kept));
      if (commandsOf(log).some((command) => known.has(command))) return 'repeated';
      rooms().set(code, [...kept, ...log]);
      return 'kept';
    },
    async load(code, after = 0) {
      const kept = rooms().get(code);
      return kept ? kept.filter(({ seq }) => seq > after) : null;
    },
    async versions(codes) {
      return new Map(
        codes.flatMap((code): [string, number][] => {
          const last = rooms().get(code)?.at(-1);
          return last ? [[code, last.seq]] : [];
        }),
      );
    },
    async codes(behind, most) {
      const ordered = [...rooms().keys()].sort(byBytes);
      return ordered.filter((code) => behind === null || byBytes(code, behind) > 0).slice(0, most);
    },
    async remove(code) {
      rooms().delete(code);
    },
    async removeOlder(before) {
      const old = [...rooms()].filter(([, log]) => log.at(-1)!.at < before);
      for (const [code] of old) rooms().delete(code);
      return old.length;
    },
    async count() {
      return rooms().size;
    },
    async close() {
      closed = true;
    },
  };
}
