// The choices that a seat can make; each names its step, so that one that comes late cannot count for another step.
import type { Seat } from '../deal/seat.ts';
import type { Face } from '../tiles/face.ts';
import type { Actor } from './round.ts';
import type { MoveStep } from './schedule.ts';

/** A choice without the seat that makes it, as bots return it and messages carry it. */
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

/** A choice that answers the step, as opposed to withdrawing an answer. */
export type AnswerChoice = Exclude<Choice, { kind: 'withdraw' }>;
