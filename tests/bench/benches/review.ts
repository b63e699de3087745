// How long a review takes: the first answer for a whole seat, and one choice judged deeply, beside the plain twin.
import {
  analyze,
  createAnalyst,
  DEEP,
  houseCard,
  NO_SIMD,
  type RecordedDecision,
  reviewRound,
  SHALLOW,
} from '../../../shared-engine/index.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import { analyst, choicesFrom } from '../../prove/analysis/choices.ts';
import type { Bench } from '../bench.ts';

const ROUNDS = 40;
const CHOICES = 60;
const PLAIN_CHOICES = 12;

export const bench: Bench = {
  summary: 'Core seconds to judge one choice deeply, and milliseconds for the first answer of a seat.',
  async run({ seed }) {
    const choices = choicesFrom(`${seed} bench`, CHOICES);
    // Once for the compiler.
    analyze(analyst, choices[0]!.offered, choices[0]!.subject, DEEP);
    const judged = choices.map((choice) => judge(choice));
    const seconds = sorted(judged.map(({ core }) => core));
    const widths = sorted(judged.flatMap(({ within }) => (within === null ? [] : [within])));
    const decided = judged.filter(({ verdict }) => verdict !== 'cant-say').length;
    const first = firstAnswers(seed);
    return {
      choices: choices.length,
      median_core_s: thousandth(middle(seconds)),
      worst_core_s: thousandth(seconds.at(-1)!),
      decided_share: thousandth(decided / choices.length),
      median_half_width: thousandth(middle(widths)),
      plain_ratio: ratioToPlain(choices.slice(0, PLAIN_CHOICES)),
      first_answer_median_ms: thousandth(middle(first)),
      first_answer_worst_ms: thousandth(first.at(-1)!),
    };
  },
};

function judge({ offered, subject }: RecordedDecision) {
  const started = process.cpuUsage();
  const { verdict, bestAlternative } = analyze(analyst, offered, subject, DEEP)!;
  return { core: coreSeconds(started), verdict, within: bestAlternative?.difference.halfWidth ?? null };
}

/** The same choices at the same shallow depth: plain words against the vector module. */
function ratioToPlain(choices: readonly RecordedDecision[]): number {
  const plain = createAnalyst(houseCard(), NO_SIMD);
  const [slow, fast] = [plain, analyst].map((each) => {
    const started = process.cpuUsage();
    for (const { offered, subject } of choices) analyze(each, offered, subject, SHALLOW);
    return coreSeconds(started);
  });
  return Math.round((slow! / fast!) * 10) / 10;
}

function firstAnswers(seed: string): readonly number[] {
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
