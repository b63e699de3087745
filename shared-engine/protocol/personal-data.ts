// What the server keeps of one person in a room or a class, as it tells that person.
import { z } from 'zod';

/** One thing that is kept: when it came, what it is, and whatever belongs to it. */
const keptEntrySchema = z.looseObject({
  /** Milliseconds since 1970. */
  at: z.number(),
  what: z.string(),
});
export type KeptEntry = z.infer<typeof keptEntrySchema>;

/** `GET` of `minePath` and `classMinePath`, oldest first. */
export const keptSchema = z.object({ kept: z.array(keptEntrySchema).readonly() });
