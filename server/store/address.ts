// Where rooms are stored, as settings and the command line name it, and how that store is opened.
import { existsSync } from 'node:fs';
import type { OpenedStore } from './opened.ts';
import { postgresStore } from './postgres.ts';
import { openPool } from './postgres-pool.ts';
import { openSqlite } from './sqlite.ts';

export type StoreAddress =
  | { readonly kind: 'sqlite'; readonly location: string }
  | { readonly kind: 'postgres'; readonly url: string };

/** Reads `sqlite:PATH`, `postgres:URL` or a URL that begins with postgres://; null for anything else. */
export function parseAddress(text: string): StoreAddress | null {
  const [, kind, rest] = /^(sqlite|postgres|postgresql):(.+)$/s.exec(text) ?? [];
  if (kind === undefined || rest === undefined) return null;
  if (kind === 'sqlite') return { kind, location: rest };
  return { kind: 'postgres', url: rest.startsWith('//') ? text : rest };
}

export async function openAddress(address: StoreAddress): Promise<OpenedStore> {
  if (address.kind === 'sqlite') return openSqlite(address.location);
  const opened = await openPool(address.url);
  return opened.ok ? { ok: true, store: postgresStore(opened.pool) } : opened;
}

/** To be read: a file that is not there is not created, and one that a server has is opened all the same. */
export async function openExisting(address: StoreAddress): Promise<OpenedStore> {
  if (address.kind === 'sqlite' && !existsSync(address.location)) {
    return { ok: false, message: `There is no file ${address.location}; check the path behind sqlite:.` };
  }
  return address.kind === 'sqlite' ? openSqlite(address.location, 'beside') : openAddress(address);
}
