// Schemas of the HTTP messages of a published drill: what its players and its teacher receive and may send.
import { z } from 'zod';
import { cardFileSchema } from '../card/index.ts';
import { commentsSchema } from '../drill/index.ts';
import { STYLES } from '../policy/index.ts';
import {
  areVisibleLines,
  four,
  hexSchema,
  seatSchema,
  stepSchema,
  termsSchema,
  tilesSchema,
} from '../rules/index.ts';
import { answerChoiceSchema } from './answer-choice.ts';
import { spreadSchema } from './class-report.ts';
import { nameSchema } from './room-http.ts';

/** `letters` counts those of one question, `days` how far away the last day may be. */
export const PUBLISHED_LIMITS = {
  rounds: 20_000,
  questions: 400,
  questionsPerRound: 3,
  letters: 280,
  days: 400,
} as const;

/** Whether a question is one: not empty, not too long, and all of it can be seen. */
export function isQuestion(text: string): boolean {
  return text.trim() !== '' && text.length <= PUBLISHED_LIMITS.letters && areVisibleLines(text);
}

/** When a player is shown what others chose: after each choice, or when the deal is over. */
const COMPARE_TIMES = ['at-once', 'at-end'] as const;

/** Told to everybody who opens the link. */
export const publishedTermsSchema = z.strictObject({
  compare: z.enum(COMPARE_TIMES),
  /** Whether players give a name, and the teacher sees who is through; then every choice is counted at once. */
  names: z.boolean(),
  /** Whether players choose without the card. */
  cardClosed: z.boolean(),
});
export type PublishedTerms = z.infer<typeof publishedTermsSchema>;

/** `POST /api/drills`. */
export const publishDrillSchema = z.strictObject({
  /** A drill file's content; the drill parser says what is wrong with it. */
  drill: z.unknown(),
  terms: publishedTermsSchema,
  /** The end of the last day, in milliseconds since 1970. */
  until: z.int(),
  /** A card file, or null for the card that the drill file carries, or else the house card. */
  card: z.unknown().nullable(),
});
export type PublishDrill = z.infer<typeof publishDrillSchema>;
export const drillPublishedSchema = z.object({ code: z.string() });

/** A deal as every device plays it, turned so that the player sits on seat 0. */
export const publishedDealSchema = z.object({
  id: z.string(),
  title: z.string().nullable(),
  task: z.string().nullable(),
  comments: commentsSchema.nullable(),
  deal: z.object({ seed: hexSchema, dealer: seatSchema, prepared: four(tilesSchema) }),
  /** What the bots answer where the deal has a script (rule R6). */
  script: z.array(z.object({ seat: seatSchema, choice: answerChoiceSchema })).readonly(),
});
export type PublishedDeal = z.infer<typeof publishedDealSchema>;

/** `GET /api/drills/CODE`: all that a device needs to play without a network. */
export const publishedDrillSchema = z.object({
  code: z.string(),
  title: z.string(),
  /** `over` after the last day; `withdrawn` where the teacher has taken it back. */
  state: z.enum(['open', 'over', 'withdrawn']),
  until: z.int(),
  terms: publishedTermsSchema,
  tableTerms: termsSchema,
  /** Styles of the bots to the right, across and to the left, and the deals; none of them when it is no longer open. */
  bots: z.tuple([z.enum(STYLES), z.enum(STYLES), z.enum(STYLES)]).readonly(),
  deals: z.array(publishedDealSchema).readonly(),
  /** Null for the house card. */
  card: cardFileSchema.nullable(),
  /** Ids of the deals of which a round of the asker's device is counted. */
  counted: z.array(z.string()).readonly(),
  /** For how many days the drill is stored after its last event. */
  keptDays: z.int(),
  teacher: z.boolean(),
});
export type PublishedDrill = z.infer<typeof publishedDrillSchema>;

/** `POST /api/drills/CODE/rounds`. */
export const sendRoundSchema = z.strictObject({
  /** Made by the device; the same round is sent with the same id. */
  id: z.string().regex(/^[\w-]{8,40}$/),
  /** Id of the deal. */
  deal: z.string().max(40),
  /** The player's own answers in their order, without those that were taken back. */
  choices: z.array(answerChoiceSchema).max(20).readonly(),
  /** What the player wants to ask at a step. */
  questions: z
    .array(z.strictObject({ step: stepSchema, text: z.string() }))
    .max(PUBLISHED_LIMITS.questionsPerRound)
    .readonly(),
  /** Where the teacher sees names. */
  name: nameSchema.exactOptional(),
});
export type SendRound = z.infer<typeof sendRoundSchema>;

/** What is told of one deal: how many are through and what they chose, as it was released last; null before that. */
export const releasedDealSchema = z.object({
  deal: z.string(),
  through: z.int().nullable(),
  steps: z.array(spreadSchema).readonly(),
});
export type ReleasedDeal = z.infer<typeof releasedDealSchema>;

export const roundSentSchema = z.object({
  /** Whether this round is the one that counts; otherwise another one of this device does. */
  counted: z.boolean(),
  /** Whether the questions that came with it are stored: a drill takes so many and no more. */
  asked: z.boolean(),
  released: releasedDealSchema,
});
export type RoundSent = z.infer<typeof roundSentSchema>;

/** `GET /api/drills/CODE/released`: what others chose, at the deals at which the asker may compare. */
export const releasedSchema = z.object({ deals: z.array(releasedDealSchema).readonly() });

/** `GET /api/drills/CODE/dashboard`, the teacher alone. */
export const publishedDashboardSchema = z.object({
  code: z.string(),
  title: z.string(),
  state: z.enum(['open', 'over', 'withdrawn']),
  until: z.int(),
  terms: publishedTermsSchema,
  keptDays: z.int(),
  deals: z
    .array(
      z.object({
        id: z.string(),
        title: z.string().nullable(),
        note: z.string().nullable(),
        /** Players through it, as it was released last; null before that. */
        through: z.int().nullable(),
        /** Their names, where players give one. */
        names: z.array(z.string()).readonly(),
        questions: z.array(z.object({ step: stepSchema, text: z.string() })).readonly(),
      }),
    )
    .readonly(),
  /** Under which phones reach the server, as its operator has set it; null where nobody has. */
  address: z.string().nullable(),
  /** The drill as it was published, so that another one can be made of its deals. */
  drill: z.unknown(),
  /** The card that it is played on; null for the house card. */
  card: cardFileSchema.nullable(),
  keys: z.array(z.object({ id: z.int(), at: z.int() })).readonly(),
});
export type PublishedDashboard = z.infer<typeof publishedDashboardSchema>;

/** `POST /api/drills/CODE/actions`, the teacher alone. */
export const publishedActionSchema = z.discriminatedUnion('kind', [
  /** Another last day, sooner or later. */
  z.strictObject({ kind: z.literal('extend'), until: z.int() }),
  /** Nobody opens it any more; what was counted stays. */
  z.strictObject({ kind: z.literal('withdraw') }),
  z.strictObject({ kind: z.literal('revoke-key'), key: z.int() }),
]);
export type PublishedAction = z.infer<typeof publishedActionSchema>;
