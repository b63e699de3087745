// What opening a store comes to: a store, or one message that says what to do.
import type { Store } from '../ports.ts';

export type OpenedStore =
  | { readonly ok: true; readonly store: Store }
  | { readonly ok: false; readonly message: string };

/** The short code of an error of the system or of a database, as far as it has one. */
export function codeOf(error: unknown): string {
  if (!(error instanceof Error)) return 'unknown';
  return 'code' in error && typeof error.code === 'string' ? error.code : error.name;
}
