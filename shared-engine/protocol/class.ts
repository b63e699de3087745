// Schemas of the HTTP messages of a class: what its teacher, its players and the big screen receive and may ask.
import { z } from 'zod';
import { classPartSchema, DRILL_FORMS } from '../drill/index.ts';
import { seatSchema, stepSchema, termsSchema, tilesSchema } from '../rules/index.ts';
import { answerChoiceSchema } from './answer-choice.ts';
import { spreadSchema } from './class-report.ts';
import { nameSchema } from './room-http.ts';

/** Set when the class is opened, shown to its players before the first deal, and valid until its end. */
export const classTermsSchema = classPartSchema.extend({
  /** Set where friends play one deal without a teacher: who has chosen is shown what the others chose (rule SD1). */
  amongFriends: z.literal(true).exactOptional(),
});
export type ClassTerms = z.infer<typeof classTermsSchema>;

/**
 * What the teacher sees of single players, as they are told before the deal (rule AN8): racks while they choose, or not;
 * and in the report sums by name with every choice, every choice without names, or counts alone.
 */
export interface ClassPrivacy {
  readonly racks: 'seen' | 'hidden';
  readonly report: 'named' | 'every-choice' | 'counts';
}

export function privacyOf(terms: Pick<ClassTerms, 'names' | 'racks'>): ClassPrivacy {
  const report = terms.names ? 'named' : isAnonymous(terms) ? 'counts' : 'every-choice';
  return { racks: terms.racks ? 'seen' : 'hidden', report };
}

/** Whether nothing that the teacher is sent may depend on who of the class chose what (rule AN1). */
export function isAnonymous({ names, racks }: Pick<ClassTerms, 'names' | 'racks'>): boolean {
  return !names && !racks;
}

/** `POST /api/classes`. */
export const openClassSchema = z.strictObject({
  /** A drill file's content; the drill parser says what is wrong with it. */
  drill: z.unknown(),
  terms: classTermsSchema.omit({ amongFriends: true }),
  /** A card file, or null for the card that the drill file carries, or else the house card. */
  card: z.unknown().nullable(),
});
export type OpenClass = z.infer<typeof openClassSchema>;
export const classOpenedSchema = z.object({ code: z.string() });

/** `POST /api/classes/CODE/players`. */
export const joinClassSchema = z.strictObject({ name: nameSchema });
export const classJoinedSchema = z.object({ room: z.string(), seat: seatSchema });

/** `GET /api/classes/CODE`: what anybody with the code may know, and whether the asker is its teacher or a player. */
export const classInfoSchema = z.object({
  code: z.string(),
  title: z.string(),
  terms: classTermsSchema,
  /** How its tables play. */
  tableTerms: termsSchema,
  form: z.enum(DRILL_FORMS),
  deals: z.int(),
  /** 0 before the first deal. */
  dealt: z.int(),
  joiningOpen: z.boolean(),
  /** Whether players may play the deals again at home, as it is now. */
  takeHome: z.boolean(),
  ended: z.boolean(),
  /** For how many days the class is stored after its last use. */
  keptDays: z.int(),
  /** Whether a teacher asks, or a big screen. */
  teacher: z.boolean(),
  screen: z.boolean(),
  /** The player who asks, or null. */
  player: z
    .object({
      room: z.string(),
      seat: seatSchema,
      /** The deal on this player's table; null before the first. */
      deal: z
        .object({
          number: z.int(),
          of: z.int(),
          title: z.string().nullable(),
          /** What the teacher wrote for the players. */
          task: z.string().nullable(),
          /** Whether what comes to the player is set (rule R6). */
          scripted: z.boolean(),
        })
        .nullable(),
      /** The rounds at this player's table whose deals may be played again at home by now. */
      home: z.array(z.int()).readonly(),
    })
    .nullable(),
});
export type ClassInfo = z.infer<typeof classInfoSchema>;

/** Which step the big screen shows, of which kind of choice, and whether the choices are revealed. */
export const shownStepSchema = z.strictObject({
  seat: seatSchema,
  step: stepSchema,
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  revealed: z.boolean(),
});
export type ShownStep = z.infer<typeof shownStepSchema>;

/**
 * How many deals the dashboard showed as dealt when the teacher acted: what was meant for another deal is not done. A
 * program that has no dashboard leaves it out.
 */
const seenDeal = { dealt: z.int().min(0).exactOptional() };

/** `POST /api/classes/CODE/actions`, the teacher alone. */
export const classActionSchema = z.discriminatedUnion('kind', [
  /** The next deal of the drill, for every table that has closed the one before. */
  z.strictObject({ kind: z.literal('deal-next'), ...seenDeal }),
  /** The tables stop before this step; null for no stop. */
  z.strictObject({ kind: z.literal('hold'), before: stepSchema.nullable(), ...seenDeal }),
  /** For all, or for one player. */
  z.strictObject({
    kind: z.literal('more-time'),
    player: z.int().nullable(),
    seconds: z.int().min(5).max(600),
    /** What the dashboard showed as given before, by player: a table that has been given more since gets no more. */
    given: z.record(z.string(), z.int()).exactOptional(),
  }),
  /** Whether a bot plays for the player. */
  z.strictObject({ kind: z.literal('stand-in'), player: z.int(), on: z.boolean() }),
  /** Takes a player out of the class, who cannot come back; a bot plays on at the seat. */
  z.strictObject({ kind: z.literal('remove'), player: z.int() }),
  /** Gives a player another name; one that reads like another's gets a number behind it. */
  z.strictObject({ kind: z.literal('rename'), player: z.int(), name: nameSchema }),
  /**
   * Before the first deal, where players share tables: puts a player to a seat at table number `table`, 1 for the first;
   * a number that no table has opens another one. Whoever sits there takes the player's place.
   */
  z.strictObject({
    kind: z.literal('seat'),
    player: z.int(),
    table: z.int().min(1).max(60),
    seat: seatSchema,
  }),
  /** Whether somebody new may join. */
  z.strictObject({ kind: z.literal('joining'), open: z.boolean() }),
  /** Whether players may play the deals again at home; when the class has ended too. */
  z.strictObject({ kind: z.literal('take-home'), on: z.boolean() }),
  /** What the big screen shows; null for nothing. */
  z.strictObject({ kind: z.literal('show'), shown: shownStepSchema.nullable(), ...seenDeal }),
  /**
   * In a guided deal, all tables continue from this choice at step number `stepIndex`, counted from 0. The choice is
   * null where the seat has nothing to give.
   */
  z.strictObject({
    kind: z.literal('advance'),
    stepIndex: z.int().min(0),
    choice: answerChoiceSchema.nullable(),
    ...seenDeal,
  }),
  /** Takes a teacher's key back: whoever opened the dashboard with it is out. */
  z.strictObject({ kind: z.literal('revoke-key'), key: z.int() }),
  z.strictObject({ kind: z.literal('end') }),
]);
export type ClassAction = z.infer<typeof classActionSchema>;

/** `POST /api/classes/CODE/keys`, the teacher alone: a new key to the dashboard, told once. */
export const teacherKeySchema = z.object({ id: z.int(), key: z.string() });

/** `POST /api/classes/CODE/teacher`: whoever brings a key becomes a teacher of this class. */
export const bringKeySchema = z.strictObject({ key: z.string().max(100) });

/** `POST /api/classes/CODE/screen-codes`, the teacher alone: a new code for the big screen, told once. */
export const screenCodeSchema = z.object({ code: z.string() });

/** `POST /api/classes/CODE/screens`: whoever brings the code may fetch the big screen, and nothing else. */
export const bringScreenCodeSchema = z.strictObject({ code: z.string().max(40) });

/** `POST /api/classes/CODE/aims`, a player's own. */
export const classAimsSchema = z.strictObject({
  step: stepSchema,
  sections: z.array(z.string().max(40)).max(2).readonly(),
});
export type ClassAims = z.infer<typeof classAimsSchema>;

/** One player as the teacher sees it. */
const dashboardPlayerSchema = z.object({
  id: z.int(),
  name: z.string(),
  /** Number of the player's table, 1 for the first one opened. */
  table: z.int(),
  seat: seatSchema,
  present: z.boolean(),
  standIn: z.boolean(),
  /** Number of the deal on this player's table, which may be behind the class; 0 before the first. */
  deal: z.int(),
  /**
   * `waiting` before the first deal, `closed` when the deal is played. In an anonymous class `after-vote` from the vote
   * until all have played the deal, because the way from there tells the vote (rule AN7).
   */
  at: z.union([stepSchema, z.literal(['waiting', 'after-vote', 'closed'])]),
  /** Whether this player has answered the step. */
  submitted: z.boolean(),
  /** Whether this table has stopped before the step. */
  held: z.boolean(),
  /** Whether this player has asked for the next deal. */
  ready: z.boolean(),
  /** Milliseconds in the open step, and left of it where there is a deadline. */
  since: z.number(),
  remaining: z.number().nullable(),
  /** Seconds that the teacher has given for the open step. */
  given: z.int(),
  /** The rack, where the terms let the teacher see it. */
  rack: tilesSchema.nullable(),
});
export type DashboardPlayer = z.infer<typeof dashboardPlayerSchema>;

/** How far a guided deal has come (rule L1). */
const guidedDealSchema = z.object({
  /** How many steps are over for the whole class. */
  stepIndex: z.int(),
  /** The step the teacher has to choose for next; null when the deal is closed. */
  step: stepSchema.nullable(),
  /** Tiles that a pass takes here; 0 where none is asked for. */
  needed: z.int(),
  /** Whether arriving tiles may be passed on blind here. */
  blindAllowed: z.boolean(),
  /** The rack that everybody holds at that step. */
  rack: tilesSchema,
  /** How many players have still to choose at this step. */
  waiting: z.int(),
  /** Once all have chosen, each choice that may be shown; 0 players where only a bot made it. */
  chosen: z.array(z.object({ choice: answerChoiceSchema, players: z.int() })).readonly(),
});
export type GuidedDeal = z.infer<typeof guidedDealSchema>;

/** `GET /api/classes/CODE/big-screen?seen=VERSION`, a teacher or a big screen; carries no name. */
export const bigScreenSchema = z.object({
  version: z.int(),
  code: z.string(),
  /** Under which phones reach the server; null where its operator has not said. */
  address: z.string().nullable(),
  title: z.string(),
  deal: z.object({ number: z.int(), of: z.int(), title: z.string().nullable() }).nullable(),
  players: z.int(),
  /** How many players have answered the shown step; null where that could tell the vote (rule AN7). */
  answered: z.int().nullable(),
  shown: shownStepSchema.nullable(),
  /** The rack everybody holds at the shown step; null where racks differ. */
  rack: tilesSchema.nullable(),
  /** Which sections were named as aims before the shown step. */
  aims: z.array(z.object({ section: z.string(), count: z.int(), share: z.number() })).readonly(),
  /** Null until it is revealed. */
  spread: spreadSchema.nullable(),
  /** Names of the card's sections by id. */
  sections: z.record(z.string(), z.string()),
  ended: z.boolean(),
});
export type BigScreen = z.infer<typeof bigScreenSchema>;

/** `GET /api/classes/CODE/dashboard?seen=VERSION`, the teacher alone: answers when there is something new. */
export const dashboardSchema = z.object({
  version: z.int(),
  code: z.string(),
  /** Under which phones reach the server; null where its operator has not said. */
  address: z.string().nullable(),
  title: z.string(),
  form: z.enum(DRILL_FORMS),
  terms: classTermsSchema,
  deals: z.array(z.object({ id: z.string(), title: z.string().nullable(), note: z.string().nullable() })),
  dealt: z.int(),
  holdBefore: stepSchema.nullable(),
  joiningOpen: z.boolean(),
  takeHome: z.boolean(),
  /** How many tables can be named where a player is put elsewhere; 0 while nobody can be. */
  openTables: z.int(),
  ended: z.boolean(),
  shown: shownStepSchema.nullable(),
  /** What everybody reads on the big screen at this moment. */
  bigScreen: bigScreenSchema.pick({ answered: true, players: true, rack: true, spread: true }),
  /** The teacher's keys that have not been taken back, and when they were made, in milliseconds since 1970. */
  keys: z.array(z.object({ id: z.int(), at: z.int() })),
  /** Whether there is a code for the big screen, and how many were opened with it. */
  screens: z.object({ hasCode: z.boolean(), open: z.int() }),
  /** Null unless the drill is a guided one, and before the first deal. */
  guidedDeal: guidedDealSchema.nullable(),
  players: z.array(dashboardPlayerSchema),
  /** The steps of this deal that can be shown; in an anonymous class with no number that depends on a choice. */
  spreads: z.array(spreadSchema.pick({ seat: true, kind: true, step: true, players: true, stoodIn: true })),
});
export type Dashboard = z.infer<typeof dashboardSchema>;

/** `joins` counts those who have left, too, and `allKeys` those that were taken back. */
export const CLASS_LIMITS = { players: 60, joins: 240, keys: 12, allKeys: 100, screens: 8 } as const;
