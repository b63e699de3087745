// A built server under attack, watched from outside: its time, its memory, what it counts, and how it answers others.
import { readFileSync } from 'node:fs';

export interface WatchedServer {
  readonly url: string;
  readonly pid: number;
  /** Where it shows its metrics. */
  readonly metricsUrl: string;
}

/** Processor time it has used, in milliseconds; null where the system does not tell. */
export function cpuMs({ pid }: WatchedServer): number | null {
  const fields = proc(`/proc/${pid}/stat`)?.split(') ')[1]?.split(' ');
  // User and system time, in hundredths of a second on every Linux there is.
  return fields === undefined ? null : (Number(fields[11]) + Number(fields[12])) * 10;
}

/** Memory it holds, in megabytes; null where the system does not tell. */
export function memoryMb({ pid }: WatchedServer): number | null {
  const kilobytes = /VmRSS:\s+(\d+)/.exec(proc(`/proc/${pid}/status`) ?? '')?.[1];
  return kilobytes === undefined ? null : Number(kilobytes) / 1024;
}

/** A number that it counts. */
export async function metricOf({ metricsUrl }: WatchedServer, name: string): Promise<number> {
  const text = await (await fetch(metricsUrl)).text();
  return Number(new RegExp(`^${name} (.+)$`, 'm').exec(text)?.[1]);
}

/** What `run` answers, and the longest that somebody else waited for an answer meanwhile, in milliseconds. */
export async function waitedDuring<T>({ url }: WatchedServer, run: () => Promise<T>) {
  let isOver = false;
  let longest = 0;
  const others = async () => {
    while (!isOver) {
      const from = performance.now();
      await (await fetch(`${url}/healthz`)).arrayBuffer();
      longest = Math.max(longest, performance.now() - from);
    }
  };
  const waiting = others();
  const result = await run().finally(() => {
    isOver = true;
  });
  await waiting;
  return { result, longest };
}

function proc(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}
