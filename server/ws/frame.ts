// Parses the bytes of a frame into a message; the only place that does.
import { type ClientMessage, clientMessageSchema } from '../../shared-engine/index.ts';

/** Objects and lists inside one another; the deepest message has three. */
const MAX_DEPTH = 6;
const utf8 = new TextDecoder('utf-8', { fatal: true });

export type ReadFrame =
  | { readonly ok: true; readonly message: ClientMessage }
  /** `id` of the frame where it could be read that far. */
  | { readonly ok: false; readonly id: string | null };

export function readFrame(data: Uint8Array): ReadFrame {
  let json: unknown;
  try {
    json = JSON.parse(utf8.decode(data));
  } catch {
    return { ok: false, id: null };
  }
  if (!isShallow(json, MAX_DEPTH)) return { ok: false, id: null };
  const parsed = clientMessageSchema.safeParse(json);
  return parsed.success ? { ok: true, message: parsed.data } : { ok: false, id: idOf(json) };
}

function isShallow(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return levels > 0 && Object.values(value).every((inner) => isShallow(inner, levels - 1));
}

function idOf(json: unknown): string | null {
  if (typeof json !== 'object' || json === null || !('id' in json)) return null;
  return typeof json.id === 'string' && json.id.length >= 1 && json.id.length <= 36 ? json.id : null;
}
