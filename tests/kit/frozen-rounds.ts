// Rounds frozen as text: a seed, a dealer, and every answer of the four seats in the order in which they were given.
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { AnswerChoice, Command } from '../../shared-engine/rules/exchange/command.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import { MOVE_STEPS, STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { faceSchema, seatSchema } from '../../shared-engine/rules/schemas.ts';
import { apply, type Played } from './rounds.ts';

const contradictionSchema = z.object({
  kind: z.string(),
  step: z.enum([...STEPS, 'whole round']),
  /** Two sentences that were shown side by side. */
  said: z.string(),
  beside: z.string(),
});

const frozenRoundSchema = z.object({
  seed: z.string().length(64),
  dealer: seatSchema,
  /** Whose review it was. */
  seat: seatSchema,
  /** "0 first-left dot-1 +2": a seat, a step, the tiles given and how many were passed blind, or a vote, or a number. */
  actions: z.array(z.string()),
  headline: z.string(),
  contradictions: z.array(contradictionSchema).min(1),
});
export type FrozenRound = z.infer<typeof frozenRoundSchema>;

/** The rounds of a file in `tests/engine/fixtures`. */
export function frozenRounds(name: string): readonly FrozenRound[] {
  const path = new URL(`../engine/fixtures/${name}.json`, import.meta.url);
  return z.array(frozenRoundSchema).parse(JSON.parse(readFileSync(path, 'utf8')));
}

/** Plays the actions again; throws where one of them is not legal. */
export function replayed({ seed, dealer, seat, actions }: FrozenRound): Played {
  const event = openRound({ seed, dealer }, { revealRacks: false });
  const start: Played = { round: begin(event), log: [event] };
  return actions.reduce((played, text) => apply(played, commandOf(text, seat)), start);
}

function commandOf(text: string, player: number): Command {
  const [seatText, step, ...rest] = text.split(' ');
  const seat = seatSchema.parse(Number(seatText));
  return { ...answerOf(step, rest), seat, by: seat === player ? 'player' : 'bot' };
}

function answerOf(step: string | undefined, rest: readonly string[]): AnswerChoice {
  if (step === 'vote') return { kind: 'vote', step, go: rest[0] === 'go' };
  if (step === 'courtesy-ask') return { kind: 'ask', step, count: Number(rest[0]) };
  const tiles = rest.filter((word) => !word.startsWith('+')).map((word) => faceSchema.parse(word));
  const blind = rest.find((word) => word.startsWith('+'));
  return {
    kind: 'pass',
    step: z.enum(MOVE_STEPS).parse(step),
    tiles,
    blind: Number(blind?.slice(1) ?? 0),
  };
}
