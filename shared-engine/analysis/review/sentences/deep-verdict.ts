// What was found by playing a choice on, in words.
import { MOVES } from '../../../rules/index.ts';
import type { DeepAnalysis } from '../analysis.ts';
import type { ChoiceReview } from '../review.ts';
import { insteadPhrase } from './instead.ts';
import { moreWins, times } from './phrases.ts';

/** Every sentence stands for a verdict and says no more than its rule allows. */
export function deepVerdict(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { loss, bestAlternative, sampledDeals } = analysis;
  if (bestAlternative === null || loss === null) return ['Nothing else could have been chosen.'];
  return [...verdictSentences(choice, analysis, loss.value), `We played it on ${times(sampledDeals)}.`];
}

function verdictSentences(
  choice: ChoiceReview,
  { verdict, atMost, alternatives, smallLoss }: DeepAnalysis,
  loss: number,
): readonly string[] {
  const others = alternatives === 1 ? 'the other choice' : `the ${alternatives} others we compared`;
  switch (verdict) {
    case 'best':
      return [
        alternatives === 1
          ? 'The other choice did not come out better.'
          : `None of ${others} came out better.`,
      ];
    case 'just-as-good': {
      const none = alternatives === 1 ? 'The other choice is not' : `None of ${others} is`;
      return [`${none} better by more than ${winsIn(smallLoss)} in 100 games.`];
    }
    case 'a-little-worse':
      return [`A little better: ${insteadPhrase(choice)}.`, `That brings ${moreWins(loss)}.`];
    case 'costly':
      return [`Better: ${insteadPhrase(choice)}.`, `That brings ${moreWins(loss)}.`];
    case 'cant-say': {
      const more = `At most, another choice would bring ${winsIn(atMost)} more in 100 games.`;
      if (loss <= 0)
        return [`Closest other choice: ${insteadPhrase(choice)}.`, 'That brought no more wins.', more];
      return [
        `Perhaps better: ${insteadPhrase(choice)}.`,
        `That brought ${moreWins(loss)}, which may be luck.`,
        more,
      ];
    }
  }
}

/** "1 win", "1.5 wins"; rounded up, because it stands for what nothing goes beyond. */
function winsIn(value: number): string {
  const text = String(Math.ceil(value * 10) / 10);
  return `${text} ${text === '1' ? 'win' : 'wins'}`;
}

const NEIGHBORS = { right: 'on the right', across: 'across', left: 'on the left' };

/** Only where what the neighbor's gain or loss cost is beyond doubt. */
export function helpSentence(choice: ChoiceReview, { giveaway }: DeepAnalysis): readonly string[] {
  if (choice.kind !== 'pass' || giveaway === null) return [];
  if (Math.abs(giveaway.value) <= giveaway.halfWidth) return [];
  const amount = Math.abs(giveaway.value) < 0.3 ? 'a little ' : '';
  const whom = NEIGHBORS[MOVES[choice.step].toward];
  const more = giveaway.value > 0 ? 'more' : 'less';
  return [`It helped the player ${whom} ${amount}${more} than most passes.`];
}
