// What the page says about one's own choices again.

import {
  type MistakeCategory,
  MOVES,
  mistakeName,
  type PendingDecision,
  type SeatStep,
  type Step,
} from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { tileCount, tileList } from '../../tiles/tile-names.ts';

export const EXERCISES = {
  title: 'Ten minutes today',
  about: 'Ten questions at most. First your own costly choices with the same tiles, then new deals.',
  opening: 'Looking for your choices…',
  none: 'That is all for today.',
  failed: 'New deals could not be drawn in this browser.',
  noneEver: 'When a choice in one of your rounds costs clearly, it will wait for you here.',
  nextOn: (day: string) => `Your next choice comes back on ${day}.`,
  meanwhile: 'Ten racks, one question',
  left: (count: number) => (count === 1 ? 'The last one for today.' : `${count} for today.`),
  from: (step: Step, day: string) => `${STEP_NAMES[step]}, in your round of ${day}`,
  drawn: (step: Step) => `${STEP_NAMES[step]}, in a new deal`,
  before: 'What had passed before',
  east: 'You are East.',
  working: 'Playing the rest of the round many times…',
  comesBack: (day: string) => `It comes back on ${day}.`,
  next: 'Next',
  finish: 'Done for today',
  missing: 'This round or its card is not stored here any more.',
  skip: 'Go on without it',
  review: 'Review of that round',
} as const;

/** What the deals are drawn for, while one is. */
export function drawingWords(wished: MistakeCategory | null, tried: number): string {
  if (wished === null) return 'Dealing…';
  return `Looking for a deal that fits your habit…${tried > 0 ? ` ${tried} tried so far.` : ''}`;
}

/** Why this deal, before it is answered: what the mistake would be is not given away. */
export function drawnWords({ kind, wished }: DrawnFor): string {
  if (kind !== null) return 'Drawn for a habit of yours.';
  return wished === null
    ? 'No habit of yours stands out so far, so this deal comes by chance.'
    : 'No deal for your habit was found, so this one comes by chance.';
}

interface DrawnFor {
  readonly kind: MistakeCategory | null;
  readonly wished: MistakeCategory | null;
}

/** The same afterward. */
export function drawnForWords({ kind }: DrawnFor): string {
  const once = 'A new deal is asked once. It does not come back.';
  return kind === null ? once : `In this deal our club-player bot ${lower(mistakeName(kind))}. ${once}`;
}

function lower(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

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
