// Reads the JSON that a store holds, or throws an error that quotes nothing of it.
import type { z } from 'zod';

/** Throws where the text does not fit the schema: a newer version may have written it. */
export function storedJson<Schema extends z.ZodType>(schema: Schema, text: string): z.infer<Schema> {
  const parsed = schema.safeParse(jsonFrom(text));
  if (parsed.success) return parsed.data;
  throw new Error('What is stored cannot be read; was it written by another version?');
}

function jsonFrom(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
