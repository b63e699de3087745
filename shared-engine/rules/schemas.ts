// Zod schemas of the rules' own values; files, stored logs and messages are all checked with them.
import { z } from 'zod';
import { SEATS } from './deal/seat.ts';
import { ACTORS } from './exchange/round.ts';
import { STEPS } from './exchange/schedule.ts';
import {
  type AskedTerms,
  BOT_PACES,
  CARD_HELP_WAYS,
  COURTESY_WAYS,
  EAST_WAYS,
  SECOND_CHARLESTON_WAYS,
  type Terms,
} from './exchange/terms.ts';
import { FACES, type Face, type Four } from './tiles/face.ts';

export const seatSchema = z.literal(SEATS);
export const faceSchema = z.enum(FACES as [Face, ...Face[]]);
export const stepSchema = z.enum(STEPS);
export const actorSchema = z.enum(ACTORS);

/** The tiles of a rack or of a pass. */
export const tilesSchema = z.array(faceSchema).max(14).readonly();

const ways = {
  whoIsEast: z.enum(EAST_WAYS),
  secondCharleston: z.enum(SECOND_CHARLESTON_WAYS),
  blindPasses: z.boolean(),
  courtesy: z.enum(COURTESY_WAYS),
  deadline: z.int().min(15).max(300).nullable(),
  botPace: z.enum(BOT_PACES),
  cardHelp: z.enum(CARD_HELP_WAYS),
  passLog: z.boolean(),
  revealRacks: z.boolean(),
};
export const termsSchema = z.strictObject(ways) satisfies z.ZodType<Terms>;

/** Terms as somebody asks for them; `termsFrom` says whether a table can play by them. */
export const askedTermsSchema = z.strictObject({
  whoIsEast: ways.whoIsEast.exactOptional(),
  secondCharleston: ways.secondCharleston.exactOptional(),
  blindPasses: ways.blindPasses.exactOptional(),
  courtesy: z.enum([...COURTESY_WAYS, 'pot']).exactOptional(),
  deadline: ways.deadline.exactOptional(),
  botPace: ways.botPace.exactOptional(),
  cardHelp: ways.cardHelp.exactOptional(),
  passLog: ways.passLog.exactOptional(),
  revealRacks: ways.revealRacks.exactOptional(),
  players: z.int().min(2).max(8).exactOptional(),
  blankTiles: z.int().min(0).max(20).exactOptional(),
}) satisfies z.ZodType<AskedTerms>;

/** A 256-bit seed or hash: 64 hexadecimal digits. */
export const hexSchema = z.string().regex(/^[0-9a-f]{64}$/);

/** One value a seat. */
export function four<T>(item: z.ZodType<T>): z.ZodType<Four<T>> {
  return z.tuple([item, item, item, item]).readonly();
}
