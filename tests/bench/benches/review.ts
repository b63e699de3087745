// How long a review takes: the quick one of a whole seat, and one choice analyzed deeply, with the SIMD module and without.
import type { Situation } from '../../../shared-engine/analysis/belief/situation.ts';
import { analyze, createAnalyst, seedsFor } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { DEEP_BUDGET, SHALLOW_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import type { ComparedAlternative } from '../../../shared-engine/analysis/comparison/comparison.ts';
import { createDealSource } from '../../../shared-engine/analysis/comparison/sampled-deals.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { whyBetter } from '../../../shared-engine/analysis/why/choice-why.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../../shared-engine/kernels/simd/module.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import { analyst, choicesFrom } from '../../prove/analysis/choices.ts';
import type { Bench } from '../bench.ts';

const ROUNDS = 40;
const CHOICES = 60;
const REFERENCE_CHOICES = 12;

export const bench: Bench = {
  summary: 'Core seconds to analyze one choice deeply, and milliseconds for the quick review of a seat.',
  async run({ seed }) {
    const choices = choicesFrom(`${seed} bench`, CHOICES);
    // Once for the compiler.
    timed(choices[0]!);
    const analyzed = choices.map(timed);
    const seconds = sorted(analyzed.map(({ core }) => core));
    const widths = sorted(analyzed.flatMap(({ halfWidth }) => halfWidth ?? []));
    const unsure = analyzed.filter(({ verdict }) => verdict === 'cant-say').length;
    const reasons = sorted(analyzed.flatMap(({ why }) => why ?? []));
    const quick = quickReviews(seed);
    return {
      choices: choices.length,
      median_core_s: thousandth(middle(seconds)),
      worst_core_s: thousandth(seconds.at(-1)!),
      cant_say_share: thousandth(unsure / choices.length),
      why_choices: reasons.length,
      why_median_core_s: thousandth(middle(reasons)),
      why_worst_core_s: thousandth(reasons.at(-1)!),
      median_half_width: thousandth(middle(widths)),
      plain_ratio: ratioToReference(choices.slice(0, REFERENCE_CHOICES)),
      first_answer_median_ms: thousandth(middle(quick)),
      first_answer_worst_ms: thousandth(quick.at(-1)!),
    };
  },
};

function timed({ offered, subject }: RecordedDecision) {
  const started = process.cpuUsage();
  const { verdict, chosen, bestAlternative } = analyze(analyst, offered, { subject, budget: DEEP_BUDGET })!;
  const core = coreSeconds(started);
  const isBetter = verdict === 'costly' || verdict === 'a-little-worse';
  const named = isBetter ? bestAlternative : null;
  const halfWidth = bestAlternative?.difference.halfWidth ?? null;
  return { core, verdict, halfWidth, why: named && timedWhy(offered.situation, chosen, named) };
}

/** The reasons why another choice is better, which are looked for after the comparison. */
function timedWhy(situation: Situation, played: ComparedAlternative, named: ComparedAlternative): number {
  const started = process.cpuUsage();
  const seeds = seedsFor(analyst, situation, {});
  whyBetter(analyst, createDealSource(analyst, situation, seeds), {
    situation,
    seeds,
    played: played.alternative,
    named: named.alternative,
    batches: DEEP_BUDGET.why,
  });
  return coreSeconds(started);
}

/** The same choices on the same small budget: the reference implementations against the SIMD module. */
function ratioToReference(choices: readonly RecordedDecision[]): number {
  const reference = createAnalyst(houseCard(), NO_SIMD);
  const [slow, fast] = [reference, analyst].map((each) => {
    const started = process.cpuUsage();
    for (const { offered, subject } of choices) analyze(each, offered, { subject, budget: SHALLOW_BUDGET });
    return coreSeconds(started);
  });
  return Math.round((slow! / fast!) * 10) / 10;
}

function quickReviews(seed: string): readonly number[] {
  const [, ...rest] = records(seed, ROUNDS).map((record) => {
    const started = performance.now();
    reviewRound(record, houseKernel);
    return performance.now() - started;
  });
  return sorted(rest);
}

function coreSeconds(since: NodeJS.CpuUsage): number {
  return process.cpuUsage(since).user / 1e6;
}

function sorted(values: readonly number[]): readonly number[] {
  return [...values].sort((a, b) => a - b);
}

function middle(values: readonly number[]): number {
  return values[Math.floor(values.length / 2)]!;
}

function thousandth(value: number): number {
  return Math.round(value * 1000) / 1000;
}
