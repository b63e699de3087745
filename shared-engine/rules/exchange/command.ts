// What a seat may ask of a round; each command names its step, so that a late one cannot hit the wrong step.
import type { Seat } from '../deal/seat.ts';
import type { Face } from '../tiles/face.ts';
import type { Actor } from './round.ts';
import type { MoveStep } from './schedule.ts';

/** A choice without its author: what a bot returns and what a frame carries. */
export type Choice =
  | {
      readonly kind: 'pass';
      readonly step: MoveStep;
      readonly tiles: readonly Face[];
      readonly blind: number;
    }
  | { readonly kind: 'withdraw'; readonly step: MoveStep }
  | { readonly kind: 'vote'; readonly step: 'vote'; readonly go: boolean }
  | { readonly kind: 'ask'; readonly step: 'courtesy-ask'; readonly count: number };

export type Command = Choice & { readonly seat: Seat; readonly by: Actor };

/** A choice that answers the step, as opposed to taking an answer back. */
export type AnswerChoice = Exclude<Choice, { kind: 'withdraw' }>;
