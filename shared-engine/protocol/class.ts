// What a teacher, a pupil and the wall are told of a class, and what they may ask of it: zod schemas over HTTP.
import { z } from 'zod';
import { SEATS } from '../deal/seat.ts';
import { DRILL_FORMS } from '../drill/format.ts';
import { CLASS_REPORT_FORMAT } from '../drill/report/class-report.ts';
import { THEME_NAMES } from '../drill/report/themes.ts';
import type { AnswerChoice } from '../exchange/command.ts';
import { MOVE_STEPS, PASS_SIZE, STEPS } from '../exchange/schedule.ts';
import { nameSchema } from './messages.ts';
import { faceSchema, seatSchema, tilesSchema } from './views.ts';

export const stepSchema = z.enum(STEPS);

/** What a class is told before its first deal and what holds until its end. */
export const classTermsSchema = z.strictObject({
  /** Seconds for each step, or null for no deadline. */
  deadline: z.int().min(15).max(300).nullable(),
  /** Whether the teacher sees the pupils' racks while they choose. */
  racks: z.boolean(),
  /** Whether the teacher's report has a line for each pupil by name. */
  names: z.boolean(),
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
  pupil: z.object({ room: z.string(), seat: seatSchema }).nullable(),
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

const measuredSchema = z.object({ value: z.number(), within: z.number() });
const meanSchema = z.object({
  n: z.int(),
  mean: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const costShape = {
  loss: meanSchema.nullable(),
  points: measuredSchema.nullable(),
  costly: z.int().nullable(),
};
const chosenSchema = z.union([z.array(faceSchema).readonly(), z.int()]);

/** One step's spread as the report and the wall have it; no choice says whose it was. */
export const spreadSchema = z.object({
  seat: z.literal(SEATS),
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: stepSchema,
  pupils: z.int(),
  stoodIn: z.int(),
  racks: z.int(),
  rack: z.array(faceSchema).readonly().nullable(),
  choices: z
    .array(z.object({ chosen: chosenSchema, count: z.int(), share: z.number(), ...costShape }))
    .readonly(),
  aims: z.array(z.object({ family: z.string(), count: z.int(), share: z.number() })).readonly(),
  ...costShape,
});

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
  /** Whether this pupil has answered the open step. */
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
  /** Each choice made there once; 0 pupils where a bot alone made it. */
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

const themeSchema = z.object({
  theme: z.enum(THEME_NAMES),
  words: z.string(),
  choices: z.int(),
  pupils: z.int(),
  total: z.number(),
  loss: meanSchema,
  totalPoints: z.number().nullable(),
});

export const classReportSchema = z.object({
  format: z.literal(CLASS_REPORT_FORMAT),
  deal: z.string(),
  title: z.string().nullable(),
  pupils: z.int(),
  reviewed: z.int(),
  toGoStart: meanSchema.nullable(),
  toGoEnd: meanSchema.nullable(),
  steps: z.array(spreadSchema).readonly(),
  themes: z.array(themeSchema).readonly(),
  families: z.record(z.string(), z.string()),
});

/** `GET /api/classes/CODE/report`, the teacher alone. */
export const drillReportSchema = z.object({
  title: z.string(),
  deals: z.array(classReportSchema),
  /** By name, where the terms say so; what a pupil chose and held stays with the pupil. */
  pupils: z
    .array(
      z.object({
        name: z.string(),
        deals: z.array(
          z.object({ deal: z.string(), toGoStart: z.number(), toGoEnd: z.number(), loss: z.number() }),
        ),
      }),
    )
    .nullable(),
});
export type DrillReport = z.infer<typeof drillReportSchema>;

export const CLASS_LIMITS = { pupils: 60 } as const;
