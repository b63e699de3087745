// What was found by playing a choice on, in words.
import { MOVES } from '../../../rules/index.ts';
import type { Verdict } from '../../comparison/verdict.ts';
import type { DeepAnalysis } from '../analysis.ts';
import { feedsNeighbor, hadBetter } from '../choice-verdict.ts';
import type { ChoiceReview, NumberReview } from '../review.ts';
import { insteadPhrase, namedNumber } from './instead.ts';
import { moreWins, NEIGHBORS, times, winsOf } from './phrases.ts';

/** Every sentence stands for a verdict and says no more than its rule allows. */
export function deepVerdict(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { loss, bestAlternative } = analysis;
  if (bestAlternative === null || loss === null) return ['Nothing else could have been chosen.'];
  return verdictSentences(choice, analysis, loss.value);
}

function verdictSentences(
  choice: ChoiceReview,
  { verdict, atMost, alternatives, smallLoss }: DeepAnalysis,
  loss: number,
): readonly string[] {
  const others = `the ${alternatives} others we compared`;
  const one = choice.kind === 'vote' ? otherVote(choice) : 'The other choice';
  switch (verdict) {
    case 'best':
      return [alternatives === 1 ? `${one} did not come out better.` : `None of ${others} came out better.`];
    case 'just-as-good': {
      const none = alternatives === 1 ? `${one} is not` : `None of ${others} is`;
      return [`${none} better by more than ${smallLoss} ${smallLoss === 1 ? 'win' : 'wins'} in 100 games.`];
    }
    case 'a-little-worse':
      return [`A little better: ${insteadPhrase(choice)}.`, gainSentence(verdict, loss, smallLoss)];
    case 'costly':
      return [`Better: ${insteadPhrase(choice)}.`, gainSentence(verdict, loss, smallLoss)];
    case 'cant-say': {
      const another = alternatives === 1 ? one : `One of ${others}`;
      const open = `${another} may still be better, by up to ${upTo(atMost)} in 100 games.`;
      // Less than a tenth of a win would read as none.
      if (loss < 0.05)
        return [`Best other choice: ${insteadPhrase(choice)}.`, 'That brought no more wins.', open];
      return [
        `Perhaps better: ${insteadPhrase(choice)}.`,
        `That brought ${moreWins(loss)}, which may be luck.`,
        open,
      ];
    }
  }
}

/** What the better choice brings; one that is only a little better as far as is known may turn out to bring little. */
export function gainSentence(verdict: Verdict, loss: number, smallLoss: number): string {
  const perhaps =
    verdict === 'a-little-worse' && Math.round(10 * loss) > 10 * smallLoss
      ? `, but we can’t be sure that it is more than ${smallLoss}`
      : '';
  return `That brings ${moreWins(loss)}${perhaps}.`;
}

/** "1.5 wins"; rounded up, because nothing goes beyond it. */
function upTo(value: number): string {
  const text = String(Math.ceil(value * 10) / 10);
  return `${text} ${text === '1' ? 'win' : 'wins'}`;
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

/** Only where what the neighbor's gain or loss cost is beyond doubt; it does not praise where something is better. */
export function helpSentence(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { giveaway } = analysis;
  if (choice.kind !== 'pass' || giveaway === null) return [];
  const whom = NEIGHBORS[MOVES[choice.step].toward];
  if (hadBetter(choice) && feedsNeighbor(analysis)) {
    return [`Most of what is lost went to the player ${whom}.`];
  }
  if (giveaway.value < 0 && hadBetter(choice)) return [];
  if (Math.abs(giveaway.value) <= giveaway.halfWidth) return [];
  const amount = Math.abs(giveaway.value) < 0.3 ? 'a little ' : '';
  const more = giveaway.value > 0 ? 'more' : 'less';
  return [`This pass helped the player ${whom} ${amount}${more} than most passes do.`];
}
