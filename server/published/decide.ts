// Decides what may happen to a published drill: a command causes events, or one rejection.
import {
  type AnalyzedChoice,
  type CountedChoices,
  isReleaseDue,
  PUBLISHED_LIMITS,
  releasedSpreads,
  shortSpread,
  stepsTaken,
  withRelease,
} from '../../shared-engine/index.ts';
import { accept, type Decision, reject } from '../aggregate/decision.ts';
import type { PublishedEvent, Question } from './event.ts';
import { decideKey, type KeyCommand } from './keys.ts';
import { countedDeal, inOrder, type PublishedState, phaseOf, roundsOf } from './state.ts';

const DAY_MS = 24 * 60 * 60 * 1000;

export type PublishedCommand =
  /** A round that was played out again and found right. */
  | {
      readonly kind: 'count';
      readonly player: string;
      readonly id: string;
      readonly deal: number;
      readonly choices: CountedChoices;
      readonly questions: readonly Question[];
      readonly name: string | null;
    }
  | { readonly kind: 'analyzed'; readonly choices: Readonly<Record<string, AnalyzedChoice>> }
  | { readonly kind: 'extend'; readonly until: number }
  | { readonly kind: 'withdraw' }
  | { readonly kind: 'forget'; readonly player: string }
  | KeyCommand;

/** `at` is the time of the events, in milliseconds since 1970. */
export function decidePublished(
  state: PublishedState,
  command: PublishedCommand,
  at: number,
): Decision<PublishedEvent> {
  switch (command.kind) {
    case 'count':
      return decideRound(state, command, at);
    case 'analyzed': {
      const found = Object.entries(command.choices).filter(([key]) => !state.analyzed[key]);
      return accept(found.length === 0 ? [] : [{ kind: 'analyzed', choices: Object.fromEntries(found) }]);
    }
    case 'extend':
      if (state.isWithdrawn) return reject('drill-withdrawn');
      if (!isLastDay(command.until, at)) return reject('bad-last-day');
      return accept(command.until === state.until ? [] : [{ kind: 'extended', until: command.until }]);
    case 'withdraw':
      return accept(state.isWithdrawn ? [] : [{ kind: 'withdrawn' }]);
    case 'forget': {
      const isKnown = Object.keys(roundsOf(state, command.player)).length > 0;
      return accept(isKnown ? [{ kind: 'forgotten', player: command.player }] : []);
    }
    case 'make-key':
    case 'revoke-key':
      return decideKey(state.keys, command);
  }
}

/** Still to come, and not so far away that nobody remembers it. */
export function isLastDay(until: number, at: number): boolean {
  return until > at && until <= at + PUBLISHED_LIMITS.days * DAY_MS;
}

/** The first round of a device counts; a later one, and the same one again, change nothing. */
function decideRound(
  state: PublishedState,
  { player, id, deal, choices, questions, name }: PublishedCommand & { kind: 'count' },
  at: number,
): Decision<PublishedEvent> {
  const known = roundsOf(state, player)[deal];
  if (known !== undefined) return accept([]);
  const phase = phaseOf(state, at);
  if (phase !== 'open') return reject(phase === 'over' ? 'drill-over' : 'drill-withdrawn');
  const before = state.byDeal[deal];
  if (before === undefined) return reject('round-not-played');
  if (state.rounds >= PUBLISHED_LIMITS.rounds) return reject('drill-full');
  const areStored = state.asked + questions.length <= PUBLISHED_LIMITS.questions;
  const stored = areStored ? questions : [];
  const counted: PublishedEvent = {
    kind: 'counted',
    player,
    id,
    deal,
    choices,
    ...(stored.length > 0 && { questions: stored }),
    ...(!areStored && { unasked: true }),
    ...(name !== null && { name }),
  };
  const newcomers = [...before.waiting, choices];
  if (state.terms.names || !isReleaseDue(before.through, newcomers.length)) return accept([counted]);
  const dealt = countedDeal(state, deal);
  const taken = stepsTaken(before, newcomers, dealt);
  const spreads = releasedSpreads(withRelease(before, newcomers, taken), dealt).map(shortSpread);
  const through = before.through + newcomers.length;
  const asked = inOrder([...before.waitingQuestions, ...stored]);
  return accept([counted, { kind: 'released', deal, through, taken, spreads, questions: asked }]);
}
