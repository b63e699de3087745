// Situations of rounds of bots and what the comparison finds each alternative worth, played on by a policy given.
import { alternativesTo } from '../../analysis/comparison/alternatives.ts';
import { type Analyst, createAnalyst } from '../../analysis/comparison/analyze.ts';
import { meanOf } from '../../analysis/comparison/estimate.ts';
import { always, column, createDealSource } from '../../analysis/comparison/sampled-deals.ts';
import { decisionsIn, type RecordedDecision } from '../../analysis/review/deep-analysis.ts';
import { createRollouts } from '../../analysis/rollouts/simd.ts';
import { chooseFor } from '../../bots/choose.ts';
import { finishRound } from '../../bots/finish-round.ts';
import type { CompiledCard } from '../../card/compiled.ts';
import type { Selection } from '../../kernels/pass-selection/selection.ts';
import type { SimdModule } from '../../kernels/simd/module.ts';
import { createSimdKernel } from '../../kernels/tiles-to-go/simd.ts';
import type { StyleName } from '../../policy/styles.ts';
import { type Random, seedFrom, shuffled, stream } from '../../rules/deal/random.ts';
import { forFour, SEATS, type Seat } from '../../rules/deal/seat.ts';
import { openRound } from '../../rules/exchange/decide.ts';
import { begin } from '../../rules/exchange/evolve.ts';
import { STEPS, type Step } from '../../rules/exchange/schedule.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import { seatView } from '../../rules/view/view.ts';

/** Who plays the rounds: no style that goes by the policy that is being fitted. */
const PLAYERS: readonly StyleName[] = ['strong', 'guarded', 'typical'];

/** Situations taken from each seat of a round. */
const EACH = 2;

/** The comparison's budget: passes that keep most, each in the same 128 deals to the close. */
const CANDIDATES = 16;
const BATCHES = 16;

/** One choice and what each alternative is worth. */
export interface JudgedSituation {
  readonly step: Step;
  readonly rack: Bag;
  /** Tiles where passes were compared, numbers where the vote, the blind or the courtesy number was. */
  readonly alternatives: readonly { readonly tiles: readonly number[]; readonly number: number | null }[];
  /** Wins in 100 games, in the same order. */
  readonly values: readonly number[];
}

export interface JudgeTerms {
  readonly seed: string;
  readonly situations: number;
  /** What every seat of the rollouts plays on with. */
  readonly policy: Selection;
  readonly tell: (done: number) => void;
}

/** The same terms give the same situations; another policy judges the same choices otherwise. */
export function judgedSituations(
  card: CompiledCard,
  simd: SimdModule,
  { seed, situations, policy, tell }: JudgeTerms,
): readonly JudgedSituation[] {
  const analyst = { ...createAnalyst(card, simd), rollouts: createRollouts(simd, card, { policy }) };
  const kernel = createSimdKernel(simd, card);
  const judged: JudgedSituation[] = [];
  for (let n = 0; judged.length < situations; n++) {
    const random = stream(`${seed} ${n}`, 'situations');
    const dealer = SEATS[random.below(4)]!;
    const styles = forFour(() => PLAYERS[random.below(PLAYERS.length)]!);
    const opened = begin(openRound({ seed: seedFrom(random), dealer }, { revealRacks: false }));
    const { round } = finishRound(opened, (view, draws) =>
      chooseFor(styles[view.record.seat], view, kernel, draws),
    );
    const decisions = SEATS.flatMap((seat) => pickedFrom(decisionsIn(seatView(round, seat).record), random));
    for (const decision of decisions.slice(0, situations - judged.length)) {
      judged.push(judgedBy(analyst, decision, n));
      tell(judged.length);
    }
  }
  return judged;
}

function pickedFrom(decisions: readonly RecordedDecision[], random: Random): readonly RecordedDecision[] {
  return shuffled(decisions, random).slice(0, EACH);
}

function judgedBy(analyst: Analyst, { offered, subject }: RecordedDecision, seed: number): JudgedSituation {
  const { situation } = offered;
  const { alternatives, chosen } = alternativesTo(offered, subject, analyst.leaf)!;
  const first = alternatives.slice(0, CANDIDATES);
  const tried = first.includes(chosen) ? first : [...first, chosen];
  const source = createDealSource(analyst, situation, { deals: seed, noise: seed });
  const results = source.rollOut(
    { first: 0, batches: BATCHES },
    tried.map(({ action }) => always(action)),
  );
  return {
    step: STEPS[situation.step]!,
    rack: situation.rack,
    alternatives: tried.map(({ tiles, number }) => ({ tiles, number })),
    values: tried.map((_, a) => meanOf(column(results, a, situation.seat satisfies Seat))),
  };
}
