// The store in memory: the twin that every other store is checked against, and enough for one process.
import type { Store } from '../ports.ts';
import type { Logged } from '../room/event.ts';
import { byBytes, checkNumbers, commandsOf } from './row.ts';

interface KeptRoom {
  readonly log: Logged[];
  readonly commands: Set<string>;
}

/** What outlives a store in memory: hand it to the next one and the rooms are there again. */
export type MemoryPlace = Map<string, KeptRoom>;

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
      rooms().set(code, { log: [...log], commands: new Set(commandsOf(log)) });
      return 'kept';
    },
    async append(code, after, log) {
      checkNumbers(after, log);
      const room = rooms().get(code);
      if (room?.log.length !== after) return 'conflict';
      const commands = commandsOf(log);
      if (commands.some((command) => room.commands.has(command))) return 'repeated';
      for (const command of commands) room.commands.add(command);
      room.log.push(...log);
      return 'kept';
    },
    async load(code, after = 0) {
      return rooms().get(code)?.log.slice(after) ?? null;
    },
    async versions(codes) {
      return new Map(
        codes.flatMap((code): [string, number][] => {
          const room = rooms().get(code);
          return room ? [[code, room.log.length]] : [];
        }),
      );
    },
    async codes(behind, most) {
      const ordered = [...rooms().keys()].sort(byBytes);
      return ordered.filter((code) => behind === null || byBytes(code, behind) > 0).slice(0, most);
    },
    async amend(code, log) {
      const room = rooms().get(code);
      for (const { seq, event } of log) {
        const kept = room?.log[seq - 1];
        if (room && kept) room.log[seq - 1] = { ...kept, event };
      }
    },
    async remove(code) {
      rooms().delete(code);
    },
    async removeOlder(before) {
      const old = [...rooms()].filter(([, { log }]) => log.at(-1)!.at < before);
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
