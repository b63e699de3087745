// (one seat's record, card) → its private review; by its type the true deal cannot be passed in.
import type { CompiledCard } from '../../card/index.ts';
import type { Kernel } from '../../kernels/index.ts';
import { bagOf, FACES, mayPassBlind, type SeatRecord } from '../../rules/index.ts';
import { finalRack } from '../belief/situation.ts';
import { NO_DEEP_ANALYSIS } from './analysis.ts';
import { BASIS, type Worth, worthOn } from './basis.ts';
import { reviewAsk, reviewBlind, reviewVote } from './number-review.ts';
import { rankMove, reviewPass } from './pass-review.ts';
import { type OfferedMove, type ReplayedDecision, replayDecisions } from './replay-decisions.ts';
import type { ChoiceReview, NumberFindings, PassFindings, Review } from './review.ts';
import { leastUseful } from './second-charleston.ts';
import { METHOD } from './sentences/method.ts';
import { storyOf } from './story.ts';

type Findings = PassFindings | NumberFindings;

/**
 * Reviews every choice of one seat from what it knew when it made it, in the order of the round. A record of a
 * round that is still going on gives the review of the steps that are over. The same record and card give the
 * same bytes on every machine. `earlier`, the review of the same record when fewer steps were over, saves the work
 * that went into it and changes nothing.
 */
export function reviewRound(record: SeatRecord, kernel: Kernel, earlier: Review | null = null): Review {
  const worth = worthOn(kernel);
  const found = replayDecisions(record).flatMap((decision): readonly Findings[] => {
    const known = earlier?.choices.filter(({ step }) => step === decision.step) ?? [];
    return known.length > 0 ? known : findingsOf(decision, kernel, worth);
  });
  const sections = sectionNames(kernel.card);
  const choices = found.map((choice): ChoiceReview => ({ ...choice, analysis: NO_DEEP_ANALYSIS }));
  const end = finalRack(record);
  const [toGoStart, toGoEnd] = [kernel.toGo(bagOf(record.start)), kernel.toGo(end)];
  const isDealer = record.seat === record.dealer;
  const firstDiscard = isDealer ? (FACES[leastUseful([...end], worth)] ?? null) : null;
  return {
    seat: record.seat,
    cardId: kernel.card.id,
    cardName: kernel.card.name,
    sections,
    toGoStart,
    toGoEnd,
    firstDiscard,
    basis: BASIS,
    choices,
    ledger: null,
    story: storyOf({ choices, sections, firstDiscard, toGoStart, toGoEnd, ledger: null }),
    method: METHOD,
  };
}

/** Names of the card's sections by id: a review is read without the card at hand. */
function sectionNames({ sections }: CompiledCard): Readonly<Record<string, string>> {
  return Object.fromEntries(sections.map(({ id, name }) => [id, name]));
}

function findingsOf(decision: ReplayedDecision, kernel: Kernel, worth: Worth): readonly Findings[] {
  switch (decision.kind) {
    case 'move':
      return findingsOfMove(decision, kernel, worth);
    case 'vote':
      return [reviewVote(decision, kernel, worth)];
    case 'ask':
      return [reviewAsk(decision, kernel, worth)];
  }
}

/** How many are passed blind is a choice before the tiles; where all three are, no tile is chosen. */
function findingsOfMove(decision: OfferedMove, kernel: Kernel, worth: Worth): readonly Findings[] {
  const ranking = decision.gave.length > 0 ? rankMove(decision, worth) : null;
  const blind = mayPassBlind(decision.step, decision.terms)
    ? [reviewBlind(decision, ranking, kernel, worth)]
    : [];
  return ranking ? [...blind, reviewPass(decision, ranking, kernel)] : blind;
}
