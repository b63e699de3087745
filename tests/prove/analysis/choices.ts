// Choices to analyze: everything that seats of different styles decided in rounds of the house card.
import { createAnalyst } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { decisionsIn, type RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { finishRound } from '../../../shared-engine/bots/finish-round.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import type { StyleName } from '../../../shared-engine/policy/styles.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../../shared-engine/rules/exchange/round.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';

export const card = houseCard();
export const simd = await loadSimd();
export const analyst = createAnalyst(card, simd);

/** `count` choices from as many rounds as it takes; each record gives all of its own. */
export function choicesFrom(seed: string, count: number): readonly RecordedDecision[] {
  const decisions: RecordedDecision[] = [];
  for (let n = 0; decisions.length < count; n += 4) {
    for (const record of records(`${seed} choices ${n}`, 4)) decisions.push(...decisionsIn(record));
  }
  return decisions.slice(0, count);
}

/** A closed round of four bots of one style; the dealer changes from deal to deal. */
export function roundOf(style: StyleName, name: string, deal: number): Round {
  const dealt = openRound({ seed: seedNamed(name), dealer: SEATS[deal % 4]! }, { revealRacks: false });
  return finishRound(begin(dealt), (view, random) => chooseFor(style, view, houseKernel, random)).round;
}
