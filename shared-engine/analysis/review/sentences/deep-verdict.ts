// What was found by playing a choice on, in words.
import type { DeepAnalysis, Finalist } from '../analysis.ts';
import { inTenths } from '../basis.ts';
import { isMilderAmongAll, isWorseAmongAll, toldVerdict } from '../choice-verdict.ts';
import type { ChoiceReview } from '../review.ts';
import { insteadPhrase } from './instead.ts';
import { otherVote } from './neighbors.ts';
import { moreWins, times } from './phrases.ts';

/** Every sentence stands for a verdict and says no more than its rule allows. */
export function deepVerdict(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  const { loss, bestAlternative, alternatives, smallLoss, atMost } = analysis;
  if (bestAlternative === null || loss === null) return ['Nothing else could have been chosen.'];
  const others = `None of the ${alternatives} other choices we compared`;
  const one = choice.kind === 'vote' ? otherVote(choice) : 'The other choice';
  const noneBetter = `${alternatives === 1 ? `${one} is not` : `${others} is`} better by more than`;
  switch (toldVerdict(analysis)) {
    case 'best':
      return [alternatives === 1 ? `${one} did not come out better.` : `${others} came out better.`];
    case 'just-as-good':
      return [`${noneBetter} ${upTo(smallLoss)} in 100 games.`];
    case 'a-little-worse':
    case 'costly':
      return [`${betterWords(analysis)}: ${insteadPhrase(choice)}.`, gainSentence(analysis)];
    case 'cant-say': {
      const may = alternatives === 1 ? one : `One of the ${alternatives} other choices we compared`;
      const limit = `${may} may be better, but hardly by more than ${upTo(atMost)} in 100 games.`;
      if (!namesPerhaps(analysis)) return ['We found nothing that is surely better.', limit];
      const brought = `That brought ${moreWins(loss.value)}${isMilderAmongAll(analysis) ? '' : ', which may be chance'}.`;
      const most = `The true gain may be larger, but hardly more than ${upTo(atMost)}`;
      const hidden =
        alternatives === 1
          ? `${most}.`
          : `${most} with any of the ${alternatives} other choices we compared.`;
      return [`Perhaps better: ${insteadPhrase(choice)}.`, brought, hidden];
    }
  }
}

/** How much better, by the verdict; of what brings more than a little, but perhaps only that or hardly any, both are said. */
export function betterWords(analysis: DeepAnalysis): string {
  if (toldVerdict(analysis) === 'costly') return 'Better';
  if (!isMoreThanSmall(analysis)) return 'A little better';
  return leastGain(analysis) === null ? 'Probably better' : 'At least a little better';
}

function isMoreThanSmall({ loss, smallLoss }: DeepAnalysis): boolean {
  return Number(inTenths(loss?.value ?? 0)) > smallLoss;
}

/** Of what is a little better, how little it may bring; null where that is hardly any. */
function leastGain(analysis: DeepAnalysis): string | null {
  const { loss, smallLoss } = analysis;
  // What is a little worse among each style is not surely more than the smallest loss there.
  if (isMilderAmongAll(analysis)) return isWorseAmongAll({ analysis }) ? `no more than ${smallLoss}` : null;
  const least = Math.floor(10 * ((loss?.value ?? 0) - (loss?.halfWidth ?? 0))) / 10;
  return least > 0 ? `only ${least}` : null;
}

/** Whether something is named of which it cannot be said that it is better: less than a tenth of a win would read as none. */
export function namesPerhaps(analysis: DeepAnalysis): boolean {
  const { loss } = analysis;
  return toldVerdict(analysis) === 'cant-say' && loss !== null && loss.value >= 0.05;
}

/** Up to here a loss may be costly or only a little worse: what tells the two apart is said. */
const CLEARLY = 2.45;

/**
 * What the better choice brings. Where it is only a little better, the sentence also holds what keeps the verdict from
 * being the next milder or the next harsher one: that it may be more than the smallest loss, or that it may be less.
 */
export function gainSentence(analysis: DeepAnalysis): string {
  const { loss, smallLoss } = analysis;
  const { value, halfWidth } = loss ?? { value: 0, halfWidth: 0 };
  const brings = `That brings ${moreWins(value)}`;
  if (toldVerdict(analysis) === 'costly')
    return `${brings}${value < CLEARLY ? `, most likely more than ${smallLoss}` : ''}.`;
  if (isMoreThanSmall(analysis)) return `${brings}, but perhaps ${leastGain(analysis) ?? 'hardly any'}.`;
  const most = value + halfWidth;
  return most > smallLoss ? `${brings}, perhaps up to ${inTenthsAbove(most)}.` : `${brings}.`;
}

/**
 * Where it takes another choice than the one named to bring more than the smallest loss, why it is not the one named, we
 * know less of it or it came out about as well; that choice by name; and how much it may bring.
 */
export function anotherSentence(choice: ChoiceReview, analysis: DeepAnalysis): readonly string[] {
  if (toldVerdict(analysis) !== 'a-little-worse') return [];
  const { finalists, played, bestAlternative, smallLoss } = analysis;
  const most = ({ difference: { value, halfWidth } }: Finalist): number => value + halfWidth;
  const named = finalists[bestAlternative ?? played]!;
  const [another] = finalists.filter((_, place) => place !== played).toSorted((a, b) => most(b) - most(a));
  if (another === undefined || most(named) > smallLoss || most(another) <= smallLoss) return [];
  const beside =
    another.difference.halfWidth > named.difference.halfWidth
      ? 'We know less of another choice'
      : 'Another choice did about as well';
  return [
    `${beside}: ${insteadPhrase(choice, another)}.`,
    `It may bring up to ${inTenthsAbove(most(another))} more wins in 100 games.`,
  ];
}

/** "1.5 wins"; rounded up, because nothing goes beyond it. */
function upTo(value: number): string {
  const text = inTenthsAbove(value);
  return `${text} ${text === '1' ? 'win' : 'wins'}`;
}

function inTenthsAbove(value: number): string {
  return String(Math.ceil(value * 10) / 10);
}

/** How often a choice was played on; where a server was busy it is less. */
export function playedOnSentence({ sampledDeals }: DeepAnalysis): string {
  return `We played the rest of the round ${times(sampledDeals)}.`;
}
