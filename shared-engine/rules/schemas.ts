// Zod schemas of the rules' own values; files, stored logs and messages are all checked with them.
import { z } from 'zod';
import { SEATS } from './deal/seat.ts';
import { ACTORS } from './exchange/round.ts';
import { STEPS } from './exchange/schedule.ts';
import { FACES, type Face, type Four } from './tiles/face.ts';

export const seatSchema = z.literal(SEATS);
export const faceSchema = z.enum(FACES as [Face, ...Face[]]);
export const stepSchema = z.enum(STEPS);
export const actorSchema = z.enum(ACTORS);

/** The tiles of a rack or of a pass. */
export const tilesSchema = z.array(faceSchema).max(14).readonly();

/** A 256-bit seed or hash: 64 hexadecimal digits. */
export const hexSchema = z.string().regex(/^[0-9a-f]{64}$/);

/** One value a seat. */
export function four<T>(item: z.ZodType<T>): z.ZodType<Four<T>> {
  return z.tuple([item, item, item, item]).readonly();
}
