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
  const { verdict, loss, atMost, bestAlternative, finalists, alternatives, smallLoss, sampledDeals } =
    findings;
  if (bestAlternative === null || loss === null) return 'Nothing else could have been chosen.';
  const other = alternativePhrase(finalists[bestAlternative]!, kind);
  const played = `We played it on ${times(sampledDeals)}`;
  const others = alternatives === 1 ? 'the other choice' : `none of the ${alternatives} others`;
  switch (verdict) {
    case 'best':
      return `${played}: ${others} ${alternatives === 1 ? 'did not come' : 'came'} out better.`;
    case 'just-as-good':
      return `${played}: ${others} is ${alternatives === 1 ? 'not ' : ''}better by more than ${smallLoss} ${smallLoss === 1 ? 'win' : 'wins'} in 100 games.`;
    case 'a-little-worse':
      return `${played}. A little better: ${other}, for ${moreWins(loss.value)}.`;
    case 'costly':
      return `${played}. Better: ${other}, for ${moreWins(loss.value)}.`;
    case 'cant-say': {
      const brought = loss.value > 0 ? moreWins(loss.value) : 'no more wins';
      return `${played} and can't say: ${gerund(other)} brought ${brought}, which may be luck; nothing else would bring more than ${moreWins(atMost)}.`;
    }
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

/** Only where what the neighbor's gain or loss cost is beyond doubt. */
function giveawaySentence(giveaway: MeasuredValue | null): string | null {
  if (giveaway === null || Math.abs(giveaway.value) <= giveaway.halfWidth) return null;
  const amount = Math.abs(giveaway.value) < 0.3 ? 'a little' : 'clearly';
  return `It helped whoever got it ${amount} ${giveaway.value > 0 ? 'more' : 'less'} than what club players pass.`;
}
