// The open format of drill files, as zod schemas and their types; FORMAT.md describes it.
import { z } from 'zod';
import { STYLES } from '../policy/index.ts';
import {
  areVisibleLines,
  askedTermsSchema,
  faceSchema,
  four,
  hexSchema,
  isVisibleText,
  MOVE_STEPS,
  PASS_SIZE,
  STANDARD_TERMS,
  seatSchema,
  stepSchema,
  type Terms,
  termsSchema,
} from '../rules/index.ts';

export const DRILL_FORMAT = 'quadrille-drill/1';

/** Bounds of a drill; one beyond them is rejected. */
export const DRILL_LIMITS = { deals: 60, title: 80, note: 600 } as const;

/**
 * alone: each player at a table with three bots. tables: four players at each table, bots where one is missing.
 * guided: all alone, and after each step everyone continues from the choice that the teacher made for the class.
 */
export const DRILL_FORMS = ['alone', 'tables', 'guided'] as const;

const idSchema = z
  .string()
  .max(40)
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
const titleSchema = z.string().min(1).max(DRILL_LIMITS.title).refine(isVisibleText);
const noteSchema = z.string().min(1).max(DRILL_LIMITS.note).refine(areVisibleLines);

/** A number asked for: exactly so many, or a range that is open where an end is left out. */
const amountSchema = z.union([
  z.int().min(0).max(14),
  z.strictObject({ from: z.int().min(0).max(14), to: z.int().min(0).max(14).exactOptional() }),
  z.strictObject({ to: z.int().min(0).max(14) }),
]);

/** What a rack is to be like; what is left out may be anything. `constraint.ts` says what each entry counts. */
export const constraintSchema = z.strictObject({
  jokers: amountSchema.exactOptional(),
  flowers: amountSchema.exactOptional(),
  pairs: amountSchema.exactOptional(),
  pungs: amountSchema.exactOptional(),
  kongs: amountSchema.exactOptional(),
  inARow: amountSchema.exactOptional(),
  likeNumbers: amountSchema.exactOptional(),
  toGo: amountSchema.exactOptional(),
  /** Id of the section of the card that the rack is closest to, or one of the closest. */
  section: z.string().min(1).max(40).exactOptional(),
});

/** Longer than any rack, so that too many tiles are reported as a fault of the tiles, not of the structure. */
const rackSchema = z.array(faceSchema).max(300).readonly();

/** The seed decides all tiles that are not set. */
const tilesSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('random'), seed: hexSchema }),
  /** Tiles set by hand, by seat; an empty rack is dealt as a whole. */
  z.strictObject({ kind: z.literal('manual'), racks: four(rackSchema), seed: hexSchema }),
  /** The rack of the deal's seat is drawn from all that fit, each equally likely. */
  z.strictObject({ kind: z.literal('sampled'), constraint: constraintSchema, seed: hexSchema }),
]);

const arrivalSchema = z.array(faceSchema).min(1).max(PASS_SIZE).readonly();

/** What the other seats do, whatever the player chooses (rule R6); what is left out, their bots choose. */
const scriptedSchema = z.strictObject({
  /** What arrives at the deal's seat, by step. */
  arrivals: z.partialRecord(z.enum(MOVE_STEPS), arrivalSchema),
  /** The other seats that stop before a second Charleston; empty where all of them continue. */
  stopped: z.array(seatSchema).max(3).readonly().exactOptional(),
  /** How many tiles the seat across asks for. */
  asked: z.int().min(0).max(PASS_SIZE).exactOptional(),
});

/** What the teacher chose at a step, as reports write a choice, and what the teacher says of it. */
const commentSchema = z.strictObject({
  /** Tiles passed, or a number: asked for, or 1 to continue and 0 to stop. */
  chosen: z
    .union([z.array(faceSchema).min(1).max(PASS_SIZE).readonly(), z.int().min(0).max(PASS_SIZE)])
    .exactOptional(),
  words: noteSchema.exactOptional(),
});
type Comment = z.infer<typeof commentSchema>;

function isChoiceOf(step: string, { chosen }: Comment): boolean {
  if (chosen === undefined) return true;
  if (step === 'courtesy-ask') return typeof chosen === 'number';
  return step === 'vote'
    ? chosen === 0 || chosen === 1
    : typeof chosen !== 'number' && !chosen.includes('joker');
}

/** By step; players read a comment when they have chosen there themselves. */
export const commentsSchema = z
  .partialRecord(stepSchema, commentSchema)
  .refine((comments) => Object.entries(comments).every(([step, comment]) => isChoiceOf(step, comment)));

export const drillDealSchema = z.strictObject({
  id: idSchema,
  title: titleSchema.exactOptional(),
  /** What the players read while they play the deal. */
  task: noteSchema.exactOptional(),
  /** For the teacher alone. */
  note: noteSchema.exactOptional(),
  /** Where the player sits; with four players at a table, the seat the deal was made for. */
  seat: seatSchema,
  dealer: seatSchema,
  tiles: tilesSchema,
  scripted: scriptedSchema.exactOptional(),
  comments: commentsSchema.exactOptional(),
});

/** The ways to play that a drill may fix (rules W2–W4, W6); East is the deal's, the clock the class's. */
const WAYS = {
  secondCharleston: true,
  blindPasses: true,
  courtesy: true,
  cardHelp: true,
  passLog: true,
} as const;
const waysSchema = termsSchema.pick(WAYS);
/** As a file may ask for them. */
export const askedWaysSchema = askedTermsSchema.pick({ ...WAYS, players: true, blankTiles: true });

export const drillSchema = z.strictObject({
  format: z.literal(DRILL_FORMAT),
  title: titleSchema,
  form: z.enum(DRILL_FORMS),
  /** Left out where the class plays as usual. */
  ways: waysSchema.exactOptional(),
  bots: z.strictObject({
    /** To the right of the player's seat, across from it and to its left. */
    styles: z.tuple([z.enum(STYLES), z.enum(STYLES), z.enum(STYLES)]).readonly(),
    /** Decides every draw after the deal, the same at each table. */
    seed: hexSchema,
  }),
  deals: z.array(drillDealSchema).min(1).max(DRILL_LIMITS.deals).readonly(),
});

/** The clock of a class and what its teacher sees: set when it is opened, and told to its players before the first deal. */
export const classPartSchema = z.strictObject({
  /** Seconds for each step, or null for no deadline. */
  deadline: z.int().min(15).max(300).nullable(),
  /** Whether the teacher sees the players' racks while they choose. */
  racks: z.boolean(),
  /** Whether the teacher's report lists each player by name. */
  names: z.boolean(),
  /** Whether players have no card beside the rack while they choose. */
  cardClosed: z.boolean().default(false),
  /** Whether players may ask the coach before they choose; missing where they may not. */
  coach: z.boolean().exactOptional(),
  /** Whether players may play the deals again at home; missing where they may not. */
  takeHome: z.boolean().exactOptional(),
});
export type ClassPart = z.infer<typeof classPartSchema>;

export type Amount = z.infer<typeof amountSchema>;
export type Constraint = z.infer<typeof constraintSchema>;
export type DrillDeal = z.infer<typeof drillDealSchema>;
export type Drill = z.infer<typeof drillSchema>;

/** How every table of a class plays. */
export function drillTerms({ ways }: Pick<Drill, 'ways'>): Terms {
  return { ...STANDARD_TERMS.class, ...ways };
}
