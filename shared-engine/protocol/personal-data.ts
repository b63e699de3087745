// What the server keeps of one person in a room or a class, as it tells that person.
import { z } from 'zod';

/** One thing that is kept: when it came, what it is, and whatever belongs to it. */
const personalDataEntrySchema = z.looseObject({
  /** Milliseconds since 1970. */
  at: z.number(),
  what: z.string(),
});
export type PersonalDataEntry = z.infer<typeof personalDataEntrySchema>;

/** `GET` of `personalDataPath` and `classPersonalDataPath`, oldest first. */
export const personalDataSchema = z.object({ entries: z.array(personalDataEntrySchema).readonly() });
