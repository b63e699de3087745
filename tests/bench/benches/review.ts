// How long the review of one seat takes.
import { reviewRound } from '../../../shared-engine/index.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import type { Bench } from '../bench.ts';

const ROUNDS = 40;

export const bench: Bench = {
  summary: 'Milliseconds for the whole review of one seat, first call apart.',
  async run({ seed }) {
    const times = records(seed, ROUNDS).map((record) => {
      const started = performance.now();
      const { choices } = reviewRound(record, houseKernel);
      return { milliseconds: performance.now() - started, choices: choices.length };
    });
    const [first, ...rest] = times;
    const sorted = rest.map(({ milliseconds }) => milliseconds).sort((a, b) => a - b);
    return {
      reviews: ROUNDS,
      choicesEach: tenth(times.reduce((sum, { choices }) => sum + choices, 0) / ROUNDS),
      firstMs: tenth(first!.milliseconds),
      medianMs: tenth(sorted[Math.floor(sorted.length / 2)]!),
      slowestMs: tenth(sorted.at(-1)!),
    };
  },
};

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
