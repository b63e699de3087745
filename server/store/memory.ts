// The store in memory: the twin that every other store is checked against, and enough for one process.
import type { Append, AppendOutcome, LogRow, Store, StoredLog } from '../ports.ts';
import { byBytes, bytesOf, checkLog, isOfClass, isRow } from './stored-text.ts';

interface MutableLog extends StoredLog {
  snapshot: StoredLog['snapshot'];
  readonly rows: LogRow[];
}

/** What outlives a store in memory: hand it to the next one and the logs are there again. */
export type MemoryPlace = Map<string, MutableLog>;

export function memoryStore(place: MemoryPlace = new Map()): Store {
  let closed = false;

  function logs(): MemoryPlace {
    if (closed) throw new Error('The store is closed.');
    return place;
  }

  return {
    ...readsOf(logs),
    ...writesTo(logs),
    async close() {
      closed = true;
    },
  };
}

type Reads = Pick<Store, 'load' | 'loadAfter' | 'history' | 'versions' | 'codes' | 'count'>;

function readsOf(logs: () => MemoryPlace): Reads {
  return {
    async load(code) {
      const log = logs().get(code);
      if (log === undefined) return null;
      const from = log.snapshot?.version ?? 0;
      return { ...log, rows: log.rows.filter(({ version }, n) => n === 0 || version > from) };
    },
    async loadAfter(code, after) {
      return (
        logs()
          .get(code)
          ?.rows.filter(({ version }) => version > after) ?? null
      );
    },
    async history(code) {
      const log = logs().get(code);
      return log ? { ...log, rows: [...log.rows] } : null;
    },
    async versions(codes) {
      return new Map(
        codes.flatMap((code): [string, number][] => {
          const log = logs().get(code);
          return log ? [[code, versionOf(log)]] : [];
        }),
      );
    },
    async codes(after, limit) {
      const ordered = [...logs().keys()].sort(byBytes);
      return ordered.filter((code) => after === null || byBytes(code, after) > 0).slice(0, limit);
    },
    async count() {
      return logs().size;
    },
  };
}

function writesTo(logs: () => MemoryPlace): Omit<Store, keyof Reads | 'close'> {
  function append({ code, row, snapshot }: Append): AppendOutcome {
    if (!isRow(row)) return 'invalid';
    const log = logs().get(code);
    if (log === undefined || versionOf(log) !== row.after) return 'conflict';
    log.rows.push(row);
    if (snapshot) log.snapshot = snapshot;
    return 'committed';
  }

  return {
    async create(code, log) {
      checkLog(log);
      if (logs().has(code)) return 'code-taken';
      logs().set(code, { ...log, rows: [...log.rows] });
      return 'created';
    },
    async checkWritable() {
      logs();
    },
    async commit(batch) {
      logs();
      return batch.map(append);
    },
    async rewrite(code, rows, snapshot) {
      const log = logs().get(code);
      if (log === undefined) return;
      for (const { version, events } of rows) {
        const n = log.rows.findIndex((row) => row.version === version);
        if (n >= 0) log.rows[n] = { ...log.rows[n]!, events };
      }
      if (snapshot && log.snapshot?.version === snapshot.version) log.snapshot = snapshot;
    },
    async remove(code) {
      logs().delete(code);
    },
    async removeOlder(before) {
      const old = [...logs()].filter(
        ([, { kind, rows }]) => rows.at(-1)!.at < (isOfClass(kind) ? before.classes : before.rooms),
      );
      for (const [code] of old) logs().delete(code);
      return old.length;
    },
    async removeBeyond(bytes) {
      // Of logs of one moment the one that was created later is newer.
      const newestFirst = [...logs()].reverse().sort(([, a], [, b]) => b.rows.at(-1)!.at - a.rows.at(-1)!.at);
      let held = 0;
      const beyond = newestFirst.filter(([, { rows }]) => {
        held += rows.reduce((sum, row) => sum + bytesOf(row), 0);
        return held > bytes;
      });
      for (const [code] of beyond) logs().delete(code);
      return beyond.length;
    },
  };
}

function versionOf({ rows }: StoredLog): number {
  return rows.at(-1)!.version;
}
