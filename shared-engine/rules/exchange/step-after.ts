// The order of the steps, by the terms of the round and by what came of the step before.
import type { Four } from '../tiles/face.ts';
import type { MoveStep, Step } from './schedule.ts';
import type { ExchangeTerms } from './terms.ts';

/** What of an outcome decides what follows it. */
export type DecidingOutcome =
  | { readonly kind: 'move'; readonly step: MoveStep }
  | { readonly kind: 'vote'; readonly go: Four<boolean> }
  | { readonly kind: 'ask'; readonly agreed: Four<number> };

/** What follows a step that is over: the one place that knows the order of the steps (rules O1, Y1, Z1, W2, W4). */
export function stepAfter(outcome: DecidingOutcome, terms: ExchangeTerms): Step | 'close' {
  switch (outcome.kind) {
    case 'vote':
      return outcome.go.every(Boolean) ? 'second-left' : afterCharleston(terms);
    case 'ask':
      return outcome.agreed.some((count) => count > 0) ? 'courtesy-pass' : 'close';
    case 'move':
      return stepAfterMove(outcome.step, terms);
  }
}

function stepAfterMove(step: MoveStep, terms: ExchangeTerms): Step | 'close' {
  switch (step) {
    case 'first-right':
      return 'first-across';
    case 'first-across':
      return 'first-left';
    case 'first-left':
      return SECOND_CHARLESTON_STEP[terms.secondCharleston] ?? afterCharleston(terms);
    case 'second-left':
      return 'second-across';
    case 'second-across':
      return 'second-right';
    case 'second-right':
      return afterCharleston(terms);
    case 'courtesy-pass':
      return 'close';
  }
}

/** What first left leads to; null where there is no second Charleston. */
const SECOND_CHARLESTON_STEP = { 'by-vote': 'vote', always: 'second-left', none: null } as const;

function afterCharleston({ courtesy }: ExchangeTerms): Step | 'close' {
  return courtesy === 'none' ? 'close' : 'courtesy-ask';
}
