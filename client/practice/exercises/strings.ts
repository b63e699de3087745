// What the page says about one's own choices again.

import { MOVES, type PendingDecision, type SeatStep, type Step } from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { tileCount, tileList } from '../../tiles/tile-names.ts';

export const EXERCISES = {
  title: 'Ten minutes today',
  about:
    'Choices of your own that cost clearly, with the same tiles. Choose again; each comes back until you know it.',
  opening: 'Looking for your choices…',
  none: 'No choice of yours waits today.',
  noneEver: 'When a choice in one of your rounds costs clearly, it will wait for you here.',
  nextOn: (day: string) => `The next one comes back on ${day}.`,
  meanwhile: 'Ten racks, one question',
  left: (count: number) => (count === 1 ? 'The last one for today.' : `${count} for today.`),
  from: (step: Step, day: string) => `${STEP_NAMES[step]}, in your round of ${day}`,
  before: 'What had passed before',
  east: 'You are East.',
  working: 'Playing it on many times…',
  comesBack: (day: string) => `It comes back on ${day}.`,
  next: 'Next',
  finish: 'Done for today',
  missing: 'This round or its card is not stored here any more.',
  skip: 'Go on without it',
  review: 'Review of that round',
} as const;

const TOWARD = { right: 'to the right', across: 'across', left: 'to the left' } as const;

/** What the step asks, in a few words. */
export function decisionWords(decision: PendingDecision): string {
  switch (decision.kind) {
    case 'pass':
      return `Which ${tileCount(decision.count)} would you pass ${TOWARD[MOVES[decision.step].toward]}?`;
    case 'vote':
      return 'Would you continue, or stop?';
    case 'ask':
      return 'How many tiles would you ask for?';
  }
}

/** One line for a step that is over, as this seat saw it; null where there is nothing to tell. */
export function stepLine(went: SeatStep): string | null {
  switch (went.kind) {
    case 'move':
      return `${STEP_NAMES[went.step]}: you gave ${tileList(went.gave)} and got ${tileList(went.received)}.`;
    case 'vote':
      return went.go.every(Boolean) ? 'All four continued.' : null;
    case 'ask':
      return null;
  }
}
