// Schemas of the HTTP messages of a club's page: what whoever has its link reads, and what its teacher changes.
import { z } from 'zod';
import { isVisibleName, termsSchema } from '../rules/index.ts';

/** `tables` are those that stand on a page at once, `keptOff` those that may not, `letters` those of its name. */
export const CLUB_LIMITS = { tables: 24, keptOff: 48, letters: 60 } as const;

export function isClubName(text: string): boolean {
  return text.trim() !== '' && text.length <= CLUB_LIMITS.letters && isVisibleName(text);
}

/** `POST /api/clubs`. */
export const makeClubSchema = z.strictObject({ name: z.string() });
export const clubMadeSchema = z.object({ code: z.string() });

/** `GET /api/clubs/CODE`: what stands on the page; no name of a player. */
export const clubPageSchema = z.object({
  code: z.string(),
  name: z.string(),
  /** The published drill that the page shows; null for none, and for one that is deleted. */
  drill: z
    .object({
      code: z.string(),
      title: z.string(),
      state: z.enum(['open', 'over', 'withdrawn']),
      until: z.int(),
      deals: z.int(),
    })
    .nullable(),
  /** Tables with a free seat at which somebody is connected, the one put here first at the top. */
  tables: z
    .array(
      z.object({
        code: z.string(),
        free: z.int(),
        terms: termsSchema,
        /** Name of the card that is played on. */
        card: z.string(),
        /** 0 before the first deal. */
        round: z.int(),
      }),
    )
    .readonly(),
  /**
   * Every table that a host has put here, for a teacher alone: one with a free seat, one that has none, and one at which
   * nobody is connected.
   */
  listed: z
    .array(z.object({ code: z.string(), standing: z.enum(['open', 'full', 'unattended']) }))
    .readonly(),
  /** Tables that a teacher has taken off, the last one first, for a teacher alone; none comes back by itself. */
  keptOff: z.array(z.string()).readonly(),
  /** Under which phones reach the server, as its operator has set it; null where nobody has. */
  address: z.string().nullable(),
  /** For how many days the page is stored after its last change. */
  keptDays: z.int(),
  /** Whether a teacher of the page asks; the keys are for a teacher alone. */
  teacher: z.boolean(),
  keys: z.array(z.object({ id: z.int(), at: z.int() })).readonly(),
});
export type ClubPage = z.infer<typeof clubPageSchema>;

/** `POST /api/clubs/CODE/actions`, the teacher alone. */
export const clubActionSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('rename'), name: z.string() }),
  /** The published drill with this code; null for none. */
  z.strictObject({ kind: z.literal('show-drill'), code: z.string().max(40).nullable() }),
  /** Takes a table off the page, and its host cannot put it back; the table stays as it is. */
  z.strictObject({ kind: z.literal('take-off'), table: z.string().max(40) }),
  /** Its host may put the table on the page again. */
  z.strictObject({ kind: z.literal('let-back'), table: z.string().max(40) }),
  z.strictObject({ kind: z.literal('revoke-key'), key: z.int() }),
]);
export type ClubAction = z.infer<typeof clubActionSchema>;

/** `POST /api/rooms/CODE/club`, the host alone: puts the table on the page of this club, or takes it off. */
export const listTableSchema = z.strictObject({ club: z.string().max(40), on: z.boolean() });
