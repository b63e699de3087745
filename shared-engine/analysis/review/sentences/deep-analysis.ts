// What was found by playing a choice on, in one or two sentences.
import type { DeepAnalysis, Finalist, MeasuredValue } from '../analysis.ts';
import type { ChoiceReview } from '../review.ts';
import { numberPhrase } from './number.ts';
import { moreWins, times } from './phrases.ts';
import { tileList } from './tiles.ts';

type DeepFindings = Omit<DeepAnalysis, 'sentences'>;
type ChoiceKind = ChoiceReview['kind'];

export function deepSentences(findings: DeepFindings, kind: ChoiceKind): readonly string[] {
  const giveaway = giveawaySentence(findings.giveaway);
  return [verdictSentence(findings, kind), ...(giveaway === null ? [] : [giveaway])];
}

function verdictSentence(findings: DeepFindings, kind: ChoiceKind): string {
  const { verdict, loss, bestAlternative, finalists, alternatives, smallLoss, sampledDeals } = findings;
  if (bestAlternative === null || loss === null) return 'Nothing else could have been chosen.';
  const other = alternativePhrase(finalists[bestAlternative]!, kind);
  const played = `We played it on ${times(sampledDeals)}`;
  switch (verdict) {
    case 'better-exists':
      return `${played}. Better: ${other}, for ${moreWins(loss.value)}.`;
    case 'as-good': {
      const others = alternatives === 1 ? 'the other choice is not' : `none of the ${alternatives} others is`;
      return `${played}: ${others} better by more than ${smallLoss} ${smallLoss === 1 ? 'win' : 'wins'} in 100 games.`;
    }
    case 'undecided':
      return loss.value > 0
        ? `${played} and can't say: ${gerund(other)} brought ${moreWins(loss.value)}, which may be luck.`
        : `${played} and can't say: ${gerund(other)} brought no more wins, which may be luck.`;
  }
}

/** "pass 3 bam and a flower", "pass 2 blind", "continue". */
export function alternativePhrase({ tiles, number }: Finalist, kind: ChoiceKind): string {
  return kind === 'pass' ? `pass ${tileList(tiles)}` : numberPhrase(kind, number ?? 0);
}

const GERUNDS: Readonly<Record<string, string>> = {
  pass: 'passing',
  continue: 'continuing',
  stop: 'stopping',
  ask: 'asking',
};

/** "passing 3 bam and a flower", "asking for 2". */
function gerund(phrase: string): string {
  return phrase.replace(/^\w+/, (verb) => GERUNDS[verb] ?? verb);
}

/** Only where the neighbor's gain or loss is beyond doubt. */
function giveawaySentence(giveaway: MeasuredValue | null): string | null {
  if (giveaway === null || Math.abs(giveaway.value) <= giveaway.halfWidth) return null;
  const amount = Math.abs(giveaway.value) < 1 ? 'a little' : 'clearly';
  return `It helped whoever got it ${amount} ${giveaway.value > 0 ? 'more' : 'less'} than most passes.`;
}
