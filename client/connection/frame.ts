// The border of the page: a frame from the server becomes a type here, or is left out.
import * as z from 'zod';
import { type ServerMessage, serverMessageSchema } from '../../shared-engine/index.ts';

// The page's content policy forbids code made from strings, which zod would otherwise use for speed.
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
