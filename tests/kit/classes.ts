// A class for tests: players of different strength who play one deal of a drill, each against the same three bots.
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { choiceVerdict } from '../../shared-engine/analysis/review/choice-verdict.ts';
import type { ChoiceReview, Review } from '../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { botRandom } from '../../shared-engine/bots/finish-round.ts';
import type { Drill } from '../../shared-engine/drill/format.ts';
import { botsAround, prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { analyzedChoices } from '../../shared-engine/drill/report/analyzed-choice.ts';
import type { ClassEntry } from '../../shared-engine/drill/report/entry.ts';
import type { StyleName } from '../../shared-engine/policy/styles.ts';
import type { PreparedDeal } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin, evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { houseKernel } from './reviews.ts';

/** Plays the deal to its close; the seat's choices are its owner's, the others are the drill's bots. */
export function playedAlone(
  deal: PreparedDeal,
  seat: Seat,
  bots: Drill['bots'],
  choose: (round: Round) => AnswerChoice | null,
): Round {
  const styles = botsAround(seat, bots);
  let round = begin(openRound(deal, { revealRacks: false }));
  while (round.phase !== 'closed') {
    for (const place of SEATS) {
      const view = seatView(round, place);
      const step = stepOf(view.stage);
      if (step === null || view.answer !== null) continue;
      const style = styles[place];
      const choice = style
        ? chooseFor(style, view, houseKernel, botRandom(deal.seed, step, place))
        : choose(round);
      if (choice === null) continue;
      const decision = decide(round, { ...choice, seat: place, by: style ? 'bot' : 'player' });
      if (!decision.ok) throw new Error(decision.message);
      round = decision.events.reduce(evolve, round);
    }
  }
  return round;
}

/** What a class knows of a player, with the review that it follows from. */
export interface ReviewedEntry extends ClassEntry {
  readonly review: Review;
}

export function entryOf(record: SeatRecord, review: Review): ReviewedEntry {
  const toGo = { start: review.toGoStart, end: review.toGoEnd };
  return { record, review, analyses: analyzedChoices(review), toGo, aims: [] };
}

/** As if playing on had found what the quick look found, at four wins a tile. */
function playedOn(choice: ChoiceReview): ChoiceReview {
  const analysis = sampleDeepAnalysis(choiceVerdict(choice));
  const ways =
    choice.kind === 'pass'
      ? [choice.played.tiles, choice.best.tiles].map((tiles) => ({ tiles, number: null }))
      : [choice.played, choice.best].map((number) => ({ tiles: [], number }));
  const finalists = analysis.finalists.map((one, place) => ({ ...one, ...ways[place]! }));
  return {
    ...choice,
    analysis: { ...analysis, finalists, loss: { value: choice.loss * 4, halfWidth: 0.5 } },
  };
}

/** One entry for each style, in that order; what a player chooses depends on its style and its place in the list. */
export function classOf(drill: Drill, styles: readonly StyleName[]): ReviewedEntry[] {
  const [first] = drill.deals;
  const prepared = prepareDeal(drill, first!, houseKernel);
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const { seat } = first!;
  return styles.map((style, player) => {
    const random = stream(`player ${player}`, style);
    const round = playedAlone(prepared.deal, seat, drill.bots, (now) =>
      chooseFor(style, seatView(now, seat), houseKernel, random),
    );
    const { record } = seatView(round, seat);
    const review = reviewRound(record, houseKernel);
    return entryOf(record, { ...review, choices: review.choices.map(playedOn) });
  });
}

/** What a deep analysis might say of a pass: one alternative is better by 2 ± 0.5 wins in 100 games. */
export function sampleDeepAnalysis(verdict: DeepAnalysis['verdict']): DeepAnalysis {
  const finalist = {
    number: null,
    winProbability: { value: 30, halfWidth: 1 },
    giveaway: null,
    amongBest: true,
  };
  return {
    depth: 'deep',
    verdict,
    loss: { value: 2, halfWidth: 0.5 },
    atMost: 2.5,
    giveaway: null,
    played: 0,
    bestAlternative: 1,
    finalists: [
      { ...finalist, tiles: ['dot-9', 'north', 'red'], difference: { value: 0, halfWidth: 0 } },
      { ...finalist, tiles: ['bam-1', 'bam-4', 'west'], difference: { value: 2, halfWidth: 0.5 } },
    ],
    alternatives: 1,
    typicalPass: null,
    sampledDeals: 64,
    smallLoss: 1,
    why: null,
    others: null,
  };
}
