// A round as somebody's own device stores it: enough to review it again and, where the rules allow, to play it again.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { z } from 'zod';
import {
  type ChoiceReview,
  leaningOf,
  mistakesOf,
  type Review,
  VERDICTS,
  type Verdict,
} from '../analysis/index.ts';
import { STYLES } from '../policy/index.ts';
import { recordSchema } from '../protocol/index.ts';
import {
  type Actor,
  actorSchema,
  four,
  hexSchema,
  isVisibleText,
  type SeatRecord,
  STEPS,
  type Step,
  stepSchema,
  tilesSchema,
} from '../rules/index.ts';
import { unpackPlay } from './round-play.ts';

/**
 * Where a round was played: at a table of a server, by who sat there; in the page alone; as the deal of a day; or with
 * real tiles, laid in step by step.
 */
export const ROUND_PLACES = ['alone', 'friends', 'class', 'page', 'day', 'tiles'] as const;
export type RoundPlace = (typeof ROUND_PLACES)[number];

/** One choice as the review judged it; verdict and loss are null until it has been played on. */
export interface StoredChoice {
  readonly kind: Review['choices'][number]['kind'];
  readonly step: Step;
  readonly by: Actor;
  readonly verdict: Verdict | null;
  /** In wins of 100 games, with half the width of its interval; null where there was nothing else to choose. */
  readonly loss: number | null;
  readonly halfWidth: number | null;
  /** The kinds of mistake that a costly choice was, as they were called then; missing for any other. */
  readonly mistakes?: readonly string[];
  /** The kind of mistake that a number seems to be, where that is not sure enough to be told of one round. */
  readonly leaning?: string;
  /** Of a pass: there was a flower in the rack, which it could have given away. */
  readonly withFlower?: true;
}

/** Luck and choices of a round, in wins of 100 games: what is left to `close` after the other parts is luck. */
export interface StoredLedger {
  readonly start: number;
  readonly close: number;
  readonly choices: number;
  /** Half the width of the interval around `choices`. */
  readonly halfWidth: number;
  readonly standIns: number;
  readonly jumps: number;
}

const winsSchema = z.number().min(-1_000).max(1_000);
const ledgerSchema: z.ZodType<StoredLedger> = z.strictObject({
  start: winsSchema,
  close: winsSchema,
  choices: winsSchema,
  halfWidth: winsSchema,
  standIns: winsSchema,
  jumps: winsSchema,
});

const textSchema = z.string().max(120).refine(isVisibleText);

const choiceSchema: z.ZodType<StoredChoice> = z.strictObject({
  kind: z.enum(['pass', 'blind', 'vote', 'ask']),
  step: stepSchema,
  by: actorSchema,
  verdict: z.enum(VERDICTS).nullable(),
  loss: z.number().min(-100).max(100).nullable(),
  halfWidth: z.number().min(0).max(100).nullable(),
  mistakes: z.array(z.string().max(40)).max(20).readonly().exactOptional(),
  leaning: z.string().max(40).exactOptional(),
  withFlower: z.literal(true).exactOptional(),
});

/** What lists and sums need of a round. */
const summaryShape = {
  /** The same round, played once, has the same id on every device. */
  id: z.string().regex(/^[0-9a-f]{32}$/),
  /** Milliseconds since 1970, by the clock of the device. */
  playedAt: z.number().min(0).max(8.64e15),
  place: z.enum(ROUND_PLACES),
  /** Code of the table or class, date of the day's deal, or the name of the table in the page. */
  table: textSchema,
  number: z.int().min(1).max(100_000),
  /** `hash` names the stored file; null where the card could not be had. */
  card: z.strictObject({ hash: hexSchema.nullable(), id: textSchema, name: textSchema }),
  /** Whether the close has opened the deal, so that it may be played again (rules D4, Z2). */
  open: z.boolean(),
  /** Which judge gave the verdicts. */
  judge: textSchema,
  choices: z.array(choiceSchema).max(20).readonly(),
  /** How many sections were said before passes, and how many of them were within reach; missing where none was said. */
  aims: z.strictObject({ said: z.int().min(1).max(40), near: z.int().min(0).max(40) }).exactOptional(),
  /** Steps for which the coach was asked; missing where it was asked for none. */
  helped: z.array(stepSchema).max(STEPS.length).readonly().exactOptional(),
  /** Missing until it has been made. */
  ledger: ledgerSchema.exactOptional(),
};
export const roundSummarySchema = z.strictObject(summaryShape);
export type RoundSummary = z.infer<typeof roundSummarySchema>;

/** What else its review needs. */
export const roundDetailSchema = z.strictObject({
  id: summaryShape.id,
  /** By seat; a style where a bot sat. */
  seats: four(z.strictObject({ name: textSchema, style: z.enum(STYLES).nullable() })),
  /** Ids of the sections said before a pass. */
  aims: z.partialRecord(stepSchema, z.array(z.string().max(40)).max(2).readonly()),
  /** The pass that the coach named at a step; missing where it named none. */
  coached: z.partialRecord(stepSchema, tilesSchema).exactOptional(),
  /** Record and close, as `packPlay` writes them. */
  play: z
    .string()
    .max(20_000)
    .refine((text) => unpackPlay(text) !== null),
});
export type RoundDetail = z.infer<typeof roundDetailSchema>;

export interface StoredRound {
  readonly summary: RoundSummary;
  readonly detail: RoundDetail;
}

/** Names a round by where it was played and by all that its seat has seen of it. */
export function roundIdFor(
  { table, number }: Pick<RoundSummary, 'table' | 'number'>,
  commitment: string | null,
  record: SeatRecord,
): string {
  // The schema puts the fields in one order, whichever way the record came here.
  const canonical = recordSchema.parse(record);
  return textHash(JSON.stringify([table, number, commitment, canonical])).slice(0, 32);
}

/** 64 hexadecimal digits. */
export function textHash(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** The choices of a review as they are stored; `aims` are the ids of the sections said before a pass, by step. */
export function storedChoices(review: Review, aims: RoundDetail['aims'] = {}): readonly StoredChoice[] {
  return review.choices.map((choice) => storedChoice(choice, aims[choice.step]));
}

export function storedChoice(choice: ChoiceReview, aims: readonly string[] = []): StoredChoice {
  const { kind, step, by, analysis } = choice;
  if (analysis.depth === 'quick') return { kind, step, by, verdict: null, loss: null, halfWidth: null };
  const { verdict, loss } = analysis;
  const mistakes = mistakesOf(choice, aims);
  const leaning = leaningOf(choice);
  return {
    kind,
    step,
    by,
    verdict,
    loss: loss?.value ?? null,
    halfWidth: loss?.halfWidth ?? null,
    ...(mistakes.length > 0 && { mistakes }),
    ...(leaning !== null && { leaning }),
    ...(kind === 'pass' && choice.rack.includes('flower') && { withFlower: true }),
  };
}

/** What came of the aims said before passes; null where none was said. */
export function aimsMet(
  { choices }: Pick<Review, 'choices'>,
  aims: RoundDetail['aims'],
): NonNullable<RoundSummary['aims']> | null {
  let [said, near] = [0, 0];
  for (const choice of choices) {
    if (choice.kind !== 'pass') continue;
    const sections = aims[choice.step] ?? [];
    said += sections.length;
    near += sections.filter((id) => choice.sectionsInReach.includes(id)).length;
  }
  return said > 0 ? { said, near } : null;
}

/** Whether the player chose this without the coach: only such choices say what somebody does by themselves. */
export function isUnaided({ helped }: Pick<RoundSummary, 'helped'>, { by, step }: StoredChoice): boolean {
  return by === 'player' && !helped?.includes(step);
}

/** As part of a summary: nothing until the ledger has been made. */
export function storedLedger({ ledger }: Pick<Review, 'ledger'>): Pick<RoundSummary, 'ledger'> {
  if (ledger === null) return {};
  const { start, close, choices, standIns, jumps } = ledger;
  const { value, halfWidth } = choices;
  return {
    ledger: { start: start.value, close: close.value, choices: value, halfWidth, standIns, jumps },
  };
}

/** Of the same round stored twice: the one in which more has been judged, and when it was first played. */
export function mergedSummary(one: RoundSummary, other: RoundSummary): RoundSummary {
  const fuller = further(one, other);
  const hash = one.card.hash ?? other.card.hash;
  const playedAt = Math.min(one.playedAt, other.playedAt);
  const helped = [...new Set([...(one.helped ?? []), ...(other.helped ?? [])])];
  const ledger = fuller.ledger ?? one.ledger ?? other.ledger;
  const aims = fuller.aims ?? one.aims ?? other.aims;
  return {
    ...fuller,
    card: { ...fuller.card, hash },
    playedAt,
    ...(aims && { aims }),
    ...(helped.length > 0 && { helped }),
    ...(ledger && { ledger }),
  };
}

/** Verdicts of a newer judge take the place of older ones once it has judged every choice. */
function further(one: RoundSummary, other: RoundSummary): RoundSummary {
  if (one.judge !== other.judge) {
    const [older, newer] = one.judge < other.judge ? [one, other] : [other, one];
    return judged(newer) === newer.choices.length || judged(older) === 0 ? newer : older;
  }
  const more = judged(other) - judged(one) || other.choices.length - one.choices.length;
  return more > 0 ? other : one;
}

function judged({ choices }: RoundSummary): number {
  return choices.filter(({ verdict }) => verdict !== null).length;
}
