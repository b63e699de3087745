// What a teacher, a pupil and the wall are told of a class, and what they may ask of it: zod schemas over HTTP.
import { z } from 'zod';
import { DRILL_FORMS } from '../drill/format.ts';
import type { AnswerChoice } from '../rules/exchange/command.ts';
import { MOVE_STEPS, PASS_SIZE } from '../rules/exchange/schedule.ts';
import { spreadSchema, stepSchema } from './class-report.ts';
import { nameSchema } from './messages.ts';
import { seatSchema, tilesSchema } from './views.ts';

/** What a class is told before its first deal and what holds until its end. */
export const classTermsSchema = z.strictObject({
  /** Seconds for each step, or null for no deadline. */
  deadline: z.int().min(15).max(300).nullable(),
  /** Whether the teacher sees the pupils' racks while they choose. */
  racks: z.boolean(),
  /** Whether the teacher's report has a line for each pupil by name. */
  names: z.boolean(),
  /** Whether pupils have no card beside the rack while they choose. */
  cardClosed: z.boolean().default(false),
});
export type ClassTerms = z.infer<typeof classTermsSchema>;

/** `POST /api/classes`. */
export const openClassSchema = z.strictObject({
  /** A drill file's content; the drill parser says what is wrong with it. */
  drill: z.unknown(),
  terms: classTermsSchema,
  /** A card file, or null for the house card. */
  card: z.unknown().nullable(),
});
export type OpenClass = z.infer<typeof openClassSchema>;
export const classOpenedSchema = z.object({ code: z.string() });

/** `POST /api/classes/CODE/pupils`. */
export const joinClassSchema = z.strictObject({ name: nameSchema });
export const classJoinedSchema = z.object({ room: z.string(), seat: seatSchema });

/** `GET /api/classes/CODE`: what whoever has the code may know, and who asks. */
export const classInfoSchema = z.object({
  code: z.string(),
  title: z.string(),
  terms: classTermsSchema,
  form: z.enum(DRILL_FORMS),
  deals: z.int(),
  /** 0 before the first deal. */
  dealt: z.int(),
  ended: z.boolean(),
  teacher: z.boolean(),
  pupil: z
    .object({
      room: z.string(),
      seat: seatSchema,
      /** The deal on this pupil's table; null before the first. */
      deal: z
        .object({
          number: z.int(),
          of: z.int(),
          title: z.string().nullable(),
          /** What the teacher wrote for the pupils to read with it. */
          task: z.string().nullable(),
        })
        .nullable(),
    })
    .nullable(),
});
export type ClassInfo = z.infer<typeof classInfoSchema>;

/** Which step the wall shows, of which kind of choice, and whether the choices are revealed. */
export const wallChoiceSchema = z.strictObject({
  seat: seatSchema,
  step: stepSchema,
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  revealed: z.boolean(),
});
export type WallChoice = z.infer<typeof wallChoiceSchema>;

/** A choice the whole class goes on from; the round itself says whether it is a legal one. */
const lineChoiceSchema: z.ZodType<AnswerChoice> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('seal'),
    step: z.enum(MOVE_STEPS),
    tiles: tilesSchema,
    blind: z.int().min(0).max(PASS_SIZE),
  }),
  z.strictObject({ kind: z.literal('vote'), step: z.literal('vote'), go: z.boolean() }),
  z.strictObject({
    kind: z.literal('ask'),
    step: z.literal('courtesy-ask'),
    count: z.int().min(0).max(PASS_SIZE),
  }),
]);

/** `POST /api/classes/CODE/acts`, the teacher alone. */
export const classActSchema = z.discriminatedUnion('kind', [
  /** The next deal of the drill, for every table that has closed the one before. */
  z.strictObject({ kind: z.literal('deal-next') }),
  z.strictObject({ kind: z.literal('hold'), before: stepSchema.nullable() }),
  /** For all, or for one pupil. */
  z.strictObject({
    kind: z.literal('more-time'),
    pupil: z.int().nullable(),
    seconds: z.int().min(5).max(600),
  }),
  z.strictObject({ kind: z.literal('stand-in'), pupil: z.int(), on: z.boolean() }),
  z.strictObject({ kind: z.literal('show'), choice: wallChoiceSchema.nullable() }),
  /**
   * One line: all go on from this choice at step number `place` of the deal, null where the seat has nothing to give.
   */
  z.strictObject({
    kind: z.literal('go-on'),
    place: z.int().min(0),
    choice: lineChoiceSchema.nullable(),
  }),
  z.strictObject({ kind: z.literal('end') }),
]);
export type ClassAct = z.infer<typeof classActSchema>;

/** `POST /api/classes/CODE/aims`, a pupil's own. */
export const classAimsSchema = z.strictObject({
  step: stepSchema,
  families: z.array(z.string().max(40)).max(2).readonly(),
});
export type ClassAims = z.infer<typeof classAimsSchema>;

/** One pupil as the teacher sees it. */
const deskPupilSchema = z.object({
  id: z.int(),
  name: z.string(),
  seat: seatSchema,
  present: z.boolean(),
  standIn: z.boolean(),
  /** Number of the deal on this pupil's table, which may be behind the class; 0 before the first. */
  deal: z.int(),
  /** `waiting` before the first deal, `closed` when the deal is played. */
  at: z.union([stepSchema, z.literal(['waiting', 'closed'])]),
  /** Whether this pupil has answered the step. */
  sealed: z.boolean(),
  held: z.boolean(),
  /** Whether this pupil has asked for the next deal. */
  ready: z.boolean(),
  /** Milliseconds in the open step, and left of it where there is a deadline. */
  since: z.number(),
  remaining: z.number().nullable(),
  /** The rack, where the terms let the teacher see it. */
  rack: tilesSchema.nullable(),
});
export type DeskPupil = z.infer<typeof deskPupilSchema>;

/** Where a class that plays one line stands (rule L1). */
const classLineSchema = z.object({
  /** Steps that the class has gone on from. */
  place: z.int(),
  /** The step it has to go on from next; null when the deal is closed. */
  step: stepSchema.nullable(),
  /** Tiles that a pass takes here; 0 where none is asked for. */
  needed: z.int(),
  /** The rack that everybody holds at that step. */
  rack: tilesSchema,
  /** Pupils who have this step still before them. */
  waiting: z.int(),
  /** Once all have chosen, each choice made there that may be shown; 0 pupils where a bot alone made it. */
  chosen: z.array(z.object({ choice: lineChoiceSchema, pupils: z.int() })).readonly(),
});
export type ClassLine = z.infer<typeof classLineSchema>;

/** `GET /api/classes/CODE/desk?seen=VERSION`, the teacher alone: answers when there is something new. */
export const deskSchema = z.object({
  version: z.int(),
  code: z.string(),
  title: z.string(),
  form: z.enum(DRILL_FORMS),
  terms: classTermsSchema,
  deals: z.array(z.object({ id: z.string(), title: z.string().nullable(), note: z.string().nullable() })),
  dealt: z.int(),
  holdBefore: stepSchema.nullable(),
  ended: z.boolean(),
  shown: wallChoiceSchema.nullable(),
  /** Null where every table goes on by itself, and before the first deal. */
  line: classLineSchema.nullable(),
  pupils: z.array(deskPupilSchema),
  /** The steps of this deal that somebody has behind them. */
  spreads: z.array(spreadSchema.pick({ seat: true, kind: true, step: true, pupils: true, stoodIn: true })),
});
export type Desk = z.infer<typeof deskSchema>;

/** `GET /api/classes/CODE/wall?seen=VERSION`, the teacher alone; carries no name. */
export const wallSchema = z.object({
  version: z.int(),
  code: z.string(),
  title: z.string(),
  deal: z.object({ number: z.int(), of: z.int(), title: z.string().nullable() }).nullable(),
  pupils: z.int(),
  /** Who has answered the shown step. */
  answered: z.int(),
  shown: wallChoiceSchema.nullable(),
  /** The rack everybody faces at the shown step; null where racks differ. */
  rack: tilesSchema.nullable(),
  /** Which families were named as aims before the shown step. */
  aims: z.array(z.object({ family: z.string(), count: z.int(), share: z.number() })).readonly(),
  /** Null until it is revealed. */
  spread: spreadSchema.nullable(),
  families: z.record(z.string(), z.string()),
  ended: z.boolean(),
});
export type Wall = z.infer<typeof wallSchema>;

export const CLASS_LIMITS = { pupils: 60 } as const;
