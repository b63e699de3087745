// Wake-ups through PostgreSQL: LISTEN and NOTIFY on a connection of their own, never inside a write.
import pg from 'pg';
import { z } from 'zod';
import type { Cancel, Clock, Wake, WakeBus } from '../ports.ts';
import { connectionOptions, TIMEOUT_MS } from './postgres-pool.ts';

const CHANNEL = 'quadrille_wake';
/** Pause before a lost connection is opened again, in milliseconds; wake-ups until then are lost, as they may be. */
const RECONNECT_MS = 1000;
/** Wake-ups in one message; PostgreSQL takes 8,000 bytes. */
export const MAX_WAKES = 100;
/**
 * Pause after a message that is not full, in milliseconds. The database passes each on to every server, so that what
 * is saved there grows with their number; somebody at another server than the rest of the table waits this much longer.
 */
export const PAUSE_MS = 20;

const payloadSchema = z.array(z.tuple([z.string(), z.int()]));

/**
 * A NOTIFY inside the transaction of a write would make all servers commit one after the other; here the write is
 * committed already, and what gathers until the next message goes into that.
 */
export function postgresWakeBus(url: string, clock: Clock, timeoutMs = TIMEOUT_MS): WakeBus {
  const listeners = new Set<(wake: Wake) => void>();
  const waiting = new Map<string, number>();
  /** Connecting or connected. */
  let client: pg.Client | null = null;
  let open = false;
  let reconnecting: NodeJS.Timeout | undefined;
  let sending = false;
  let cancelPause: Cancel = () => {};
  let closed = false;
  let connecting = connect();

  async function connect(): Promise<void> {
    const fresh = new pg.Client(connectionOptions(url, timeoutMs));
    client = fresh;
    fresh.on('error', () => lost(fresh));
    fresh.on('end', () => lost(fresh));
    fresh.on('notification', ({ payload }) => receive(payload ?? ''));
    try {
      await fresh.connect();
      await fresh.query(`LISTEN ${CHANNEL}`);
      open = client === fresh;
    } catch {
      lost(fresh);
    }
  }

  /** Acts once for each connection, however many ways its end is noticed. */
  function lost(ended: pg.Client): void {
    if (client !== ended) return;
    client = null;
    open = false;
    waiting.clear();
    void ended.end().catch(() => {});
    if (closed) return;
    reconnecting = setTimeout(() => {
      connecting = connect();
    }, RECONNECT_MS);
    reconnecting.unref();
  }

  function receive(payload: string): void {
    for (const [code, version] of wakesIn(payload)) {
      for (const listener of listeners) listener({ code, version });
    }
  }

  async function send(): Promise<void> {
    if (sending) return;
    sending = true;
    while (client !== null && open && waiting.size > 0) {
      const by = client;
      const wakes = [...waiting].slice(0, MAX_WAKES);
      for (const [code] of wakes) waiting.delete(code);
      await by.query('SELECT pg_notify($1, $2)', [CHANNEL, JSON.stringify(wakes)]).catch(() => lost(by));
      if (wakes.length < MAX_WAKES) await pause();
    }
    sending = false;
  }

  function pause(): Promise<void> {
    return new Promise((resolve) => {
      cancelPause = clock.after(PAUSE_MS, resolve);
    });
  }

  return {
    publish({ code, version }) {
      // Without a connection nothing is gathered: when it is back, the wake-up would be old.
      if (!open) return;
      waiting.set(code, Math.max(version, waiting.get(code) ?? 0));
      void send();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async close() {
      closed = true;
      clearTimeout(reconnecting);
      cancelPause();
      await connecting;
      await client?.end().catch(() => {});
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
