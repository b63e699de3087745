// The schemas of a table as one person may see it and of its changes, and how the changes are applied.
import { z } from 'zod';
import { STYLES } from '../policy/index.ts';
import { applyViewDelta, four, MODES, seatSchema, termsSchema } from '../rules/index.ts';
import { viewDeltaSchema, viewSchema } from './views.ts';

export const codeSchema = z.string().min(1).max(40);

/** Whether an invitation for somebody's own bot to this seat is out; missing where it is not. */
const invitedSchema = z.literal(true).exactOptional();

/** What can be said at a table: three sentences to everybody, and one to a person whom the table waits for. */
export const PHRASES = ['ready', 'well-passed', 'one-moment', 'your-turn'] as const;
export type Phrase = (typeof PHRASES)[number];

const saidSchema = z.object({
  seat: seatSchema,
  phrase: z.enum(PHRASES),
  to: seatSchema.nullable(),
  /** Rises, so that the same words again are other words. */
  nth: z.int(),
});
export type Said = z.infer<typeof saidSchema>;

/** Who holds a seat, as everybody may know it. */
export const seatInfoSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('empty'), invited: invitedSchema }),
  z.object({
    kind: z.literal('bot'),
    name: z.string(),
    /** How the server's bot plays; on the seat of an external bot, how the stand-in plays while that one is silent. */
    style: z.enum(STYLES),
    invited: invitedSchema,
    /** Of a bot that runs elsewhere: the name of the host who invited it, and whether it is connected. */
    external: z.object({ by: z.string(), present: z.boolean() }).exactOptional(),
  }),
  z.object({
    kind: z.literal('person'),
    name: z.string(),
    present: z.boolean(),
    /**
     * Of somebody who is away, where bots stand in: from when on a bot chooses as soon as somebody waits, in milliseconds
     * since 1970 by the clock of the server.
     */
    botFrom: z.number().exactOptional(),
    ready: z.boolean(),
    host: z.boolean(),
  }),
]);
export type SeatInfo = z.infer<typeof seatInfoSchema>;

export const tableSchema = z.object({
  code: codeSchema,
  /** Null for a spectator. */
  you: seatSchema.nullable(),
  seats: four(seatInfoSchema),
  /** Who plays here: one person with bots, friends, or the players of a class. */
  mode: z.enum(MODES),
  terms: termsSchema,
  card: z.object({ id: z.string(), name: z.string() }),
  /** Number of the current or last round, 0 before the first deal. */
  round: z.int().min(0),
  /** Milliseconds left for the open step when this was sent, or null. */
  remaining: z.number().nullable(),
  /** Null before the first deal. Whoever sat down after the deal gets a spectator's view of that round. */
  view: viewSchema.nullable(),
  /** The last words of each seat, the latest last; they hold until the next step is over. Missing where nobody spoke. */
  said: z.array(saidSchema).readonly().exactOptional(),
  /** At a table of a class: whether the teacher has stopped it, a bot stands in for this seat, and the card is closed. */
  controls: z
    .object({
      held: z.boolean(),
      standIn: z.boolean(),
      cardClosed: z.boolean(),
      /** Whether the teacher lets players ask the coach, and whether the class has ended. */
      coach: z.literal(true).exactOptional(),
      classOver: z.literal(true).exactOptional(),
      /** Whether friends play this deal without a teacher, and may see each other's choices (rule SD1). */
      amongFriends: z.literal(true).exactOptional(),
    })
    .exactOptional(),
});
export type Table = z.infer<typeof tableSchema>;

export const tableDeltaSchema = tableSchema
  .pick({
    you: true,
    seats: true,
    terms: true,
    round: true,
    remaining: true,
    view: true,
    said: true,
    controls: true,
  })
  .partial()
  /** The changes of the view; `view` itself is sent for another round or another audience. */
  .extend({ viewDelta: viewDeltaSchema.exactOptional() });
/** The parts of a table that have changed; `applyDelta` applies them. */
export type TableDelta = z.infer<typeof tableDeltaSchema>;

/** Null where the delta does not fit the table: it was made for another one. */
export function applyDelta(table: Table, { viewDelta, ...changes }: TableDelta): Table | null {
  const { you = table.you, seats = table.seats, round = table.round, controls = table.controls } = changes;
  const { terms = table.terms, said = table.said } = changes;
  const { remaining = table.remaining, view = table.view } = changes;
  const nextView = view && viewDelta ? applyViewDelta(view, viewDelta) : view;
  if (viewDelta && nextView === null) return null;
  return {
    ...table,
    you,
    seats,
    terms,
    round,
    remaining,
    view: nextView,
    ...(said && { said }),
    ...(controls && { controls }),
  };
}
