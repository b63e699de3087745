// Wake-ups through PostgreSQL: LISTEN and NOTIFY on a connection of their own, never inside a write.
import pg from 'pg';
import { z } from 'zod';
import type { Wake, WakeBus } from '../ports.ts';
import { connectionOptions, PATIENCE } from './postgres-pool.ts';

const CHANNEL = 'quadrille_wake';
/** Pause before a lost connection is made anew, in milliseconds; meanwhile wake-ups are lost, as they may be. */
const AGAIN_MS = 1000;
/** Wake-ups in one message; PostgreSQL takes 8,000 bytes. */
const MOST = 100;

const payloadSchema = z.array(z.tuple([z.string(), z.int()]));

/**
 * A NOTIFY inside the transaction of a write would make all servers commit one after the other; here the write is
 * committed already, and what gathers while one message is under way goes into the next.
 */
export function postgresWakeBus(url: string, patience = PATIENCE): WakeBus {
  const listeners = new Set<(wake: Wake) => void>();
  const waiting = new Map<string, number>();
  /** Being made or at work. */
  let line: pg.Client | null = null;
  let open = false;
  let again: NodeJS.Timeout | undefined;
  let sending = false;
  let closed = false;
  let connecting = connect();

  async function connect(): Promise<void> {
    const fresh = new pg.Client(connectionOptions(url, patience));
    line = fresh;
    fresh.on('error', () => lost(fresh));
    fresh.on('end', () => lost(fresh));
    fresh.on('notification', ({ payload }) => hear(payload ?? ''));
    try {
      await fresh.connect();
      await fresh.query(`LISTEN ${CHANNEL}`);
      open = line === fresh;
    } catch {
      lost(fresh);
    }
  }

  /** Told once of each line, however many ways its end is noticed. */
  function lost(gone: pg.Client): void {
    if (line !== gone) return;
    line = null;
    open = false;
    waiting.clear();
    void gone.end().catch(() => {});
    if (closed) return;
    again = setTimeout(() => {
      connecting = connect();
    }, AGAIN_MS);
    again.unref();
  }

  function hear(payload: string): void {
    for (const [code, seq] of wakesIn(payload)) for (const listener of listeners) listener({ code, seq });
  }

  async function send(): Promise<void> {
    if (sending) return;
    sending = true;
    while (line !== null && open && waiting.size > 0) {
      const by = line;
      const wakes = [...waiting].slice(0, MOST);
      for (const [code] of wakes) waiting.delete(code);
      await by.query('SELECT pg_notify($1, $2)', [CHANNEL, JSON.stringify(wakes)]).catch(() => lost(by));
    }
    sending = false;
  }

  return {
    publish({ code, seq }) {
      // Without a line nothing is gathered: when it is back, the news would be old.
      if (!open) return;
      waiting.set(code, Math.max(seq, waiting.get(code) ?? 0));
      void send();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async close() {
      closed = true;
      clearTimeout(again);
      await connecting;
      await line?.end().catch(() => {});
    },
  };
}

/** What another server has sent, or nothing where it cannot be read: a wake-up may be lost. */
function wakesIn(payload: string): readonly (readonly [string, number])[] {
  try {
    return payloadSchema.parse(JSON.parse(payload));
  } catch {
    return [];
  }
}
