// Parses what the server sends: a frame becomes a typed message here, or is ignored.
import * as z from 'zod';
import { type ServerMessage, serverMessageSchema } from '../../shared-engine/index.ts';

// The page's content policy forbids code made from strings, which zod otherwise uses for speed.
z.config({ jitless: true });

/** What the page needs of a schema, whichever library made it. */
export interface Schema<T> {
  safeParse(value: unknown): { success: true; data: T } | { success: false };
}

/** Null for a frame that this page does not understand. */
export function readFrame(text: string): ServerMessage | null {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return null;
  }
  const parsed = serverMessageSchema.safeParse(json);
  return parsed.success ? parsed.data : null;
}
