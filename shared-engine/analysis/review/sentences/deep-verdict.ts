// What was found by playing a choice on, in words.
import { MOVES } from '../../../rules/index.ts';
import type { DeepAnalysis } from '../analysis.ts';
import { inTenths } from '../basis.ts';
import { feedsNeighbor, hadBetter } from '../choice-verdict.ts';
import type { ChoiceReview, NumberReview } from '../review.ts';
import { insteadPhrase, namedNumber } from './instead.ts';
import { moreWins, NEIGHBORS, times, winsOf } from './phrases.ts';

/** Every sentence stands for a verdict and says no more than its rule allows. */
export function deepVerdict(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { loss, bestAlternative, alternatives, verdict, smallLoss, atMost } = analysis;
  if (bestAlternative === null || loss === null) return ['Nothing else could have been chosen.'];
  const others = `None of the ${alternatives} others we compared`;
  const one = choice.kind === 'vote' ? otherVote(choice) : 'The other choice';
  const noneBetter = `${alternatives === 1 ? `${one} is not` : `${others} is`} better by more than`;
  switch (verdict) {
    case 'best':
      return [alternatives === 1 ? `${one} did not come out better.` : `${others} came out better.`];
    case 'just-as-good':
      return [`${noneBetter} ${upTo(smallLoss)} in 100 games.`];
    case 'a-little-worse':
      return [`A little better: ${insteadPhrase(choice)}.`, gainSentence(analysis)];
    case 'costly':
      return [`Better: ${insteadPhrase(choice)}.`, gainSentence(analysis)];
    case 'cant-say': {
      const limit = `${noneBetter} ${upTo(atMost)} in 100 games.`;
      // Less than a tenth of a win would read as none.
      if (loss.value < 0.05) return ['We found nothing that is surely better.', limit];
      const brought = `That brought ${moreWins(loss.value)}, which may be luck.`;
      return [`Perhaps better: ${insteadPhrase(choice)}.`, brought, limit];
    }
  }
}

/**
 * What the better choice brings. Where it is only a little better, the sentence also holds what keeps the verdict from
 * being the next milder or the next harsher one: that it may be more than the smallest loss, or that it may be less.
 */
export function gainSentence({ verdict, loss, atMost, smallLoss }: DeepAnalysis): string {
  const { value, halfWidth } = loss ?? { value: 0, halfWidth: 0 };
  const brings = `That brings ${moreWins(value)}`;
  if (verdict !== 'a-little-worse') return `${brings}.`;
  const least = Math.floor(10 * (value - halfWidth)) / 10;
  if (Number(inTenths(value)) > smallLoss) {
    return `${brings}, but perhaps ${least > 0 ? `only ${least}` : 'hardly any'}.`;
  }
  const most = value + halfWidth;
  return most > smallLoss
    ? `${brings}, perhaps up to ${inTenthsAbove(most)}.`
    : `${brings}; another choice perhaps up to ${inTenthsAbove(atMost)}.`;
}

/** "1.5 wins"; rounded up, because nothing goes beyond it. */
function upTo(value: number): string {
  const text = inTenthsAbove(value);
  return `${text} ${text === '1' ? 'win' : 'wins'}`;
}

function inTenthsAbove(value: number): string {
  return String(Math.ceil(value * 10) / 10);
}

/** The vote that was not chosen, as the subject of a sentence. */
function otherVote(choice: NumberReview): string {
  return namedNumber(choice) === 1 ? 'Continuing' : 'Stopping';
}

/** How often a choice was played on; where a server was busy it is less. */
export function playedOnSentence({ sampledDeals }: DeepAnalysis): string {
  return `We played the rest of the round ${times(sampledDeals)}.`;
}

/** What a vote does to the other three, only where that is beyond doubt. */
export function othersSentence(choice: ChoiceReview, { others }: DeepAnalysis): readonly string[] {
  if (choice.kind !== 'vote' || others === null || Math.abs(others.value) <= others.halfWidth) return [];
  const wins = winsOf(Math.abs(others.value));
  const does = others.value > 0 ? 'would bring' : 'would cost';
  return [`${otherVote(choice)} ${does} the other three together about ${wins} in 100 games.`];
}

/**
 * Only where what the neighbor's gain or loss cost is beyond doubt over the racks it could have had: of the one it has we
 * know nothing. It does not praise where something is better.
 */
export function helpSentence(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { giveaway } = analysis;
  if (choice.kind !== 'pass' || giveaway === null) return [];
  const whom = NEIGHBORS[MOVES[choice.step].toward];
  if (hadBetter(choice) && feedsNeighbor(analysis)) {
    return [`Most of what is lost probably goes to the player ${whom}.`];
  }
  if (giveaway.value < 0 && hadBetter(choice)) return [];
  if (Math.abs(giveaway.value) <= giveaway.halfWidth) return [];
  const amount = Math.abs(giveaway.value) < 0.3 ? 'a little ' : '';
  const more = giveaway.value > 0 ? 'more' : 'less';
  return [`This pass probably helps the player ${whom} ${amount}${more} than most passes do.`];
}
