// The class of choices that the race does not tell apart from the best: it holds the best, and it is small.
import { analyse, DEEP, SHALLOW } from '../../../shared-engine/index.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { referenceOf } from '../analysis/long-run.ts';
import { rivalsOf } from '../analysis/alternatives.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 10, full: 120 };
const BATCHES: Record<Size, number> = { small: 32, full: 256 };

/** Alternatives that the long run follows to the end: the best-looking ones and the finalists. */
const FOLLOWED = 24;

/** Ten choices say little, and are looked at briefly. */
const BARS: Record<Size, number> = { small: 0.6, full: 0.975 };
const MOST = 5;

export const proof: Proof = {
  summary: 'The choices left in front hold the best one of a long run, and are few.',
  async run({ seed, size }) {
    const sizes: number[] = [];
    let holds = 0;
    let near = 0;
    for (const { offered, asked } of choicesFrom(`${seed} tie`, CHOICES[size])) {
      const { finalists } = analyse(analyst, offered, asked, size === 'full' ? DEEP : SHALLOW)!;
      const known = finalists.map(({ alternative }) => alternative);
      const others = rivalsOf(offered, asked)
        .slice(0, FOLLOWED)
        .filter((other) => !isAmong(other, known));
      const followed = [...known, ...others];
      const reference = referenceOf(offered, followed, BATCHES[size]);
      const best = reference.means.indexOf(Math.max(...reference.means));
      const front = finalists.flatMap(({ inFront }, n) => (inFront ? [n] : []));
      sizes.push(front.length);
      if (front.includes(best)) holds++;
      const lead = Math.min(...front.map((n) => reference.means[best]! - reference.means[n]!));
      if (lead <= 0.25) near++;
    }
    sizes.sort((a, b) => a - b);
    const median = sizes[Math.floor(sizes.length / 2)]!;
    return [
      {
        what: `choices whose front holds the best of ${BATCHES[size] * 8} other worlds`,
        value: shareText(holds, sizes.length),
        bar: `at least ${BARS[size] * 100} %`,
        ok: holds >= BARS[size] * sizes.length,
      },
      {
        what: 'choices whose front holds one within a quarter of a point of it',
        value: shareText(near, sizes.length),
        bar: 'reported',
        ok: true,
      },
      { what: 'median size of the front', value: median, bar: `at most ${MOST}`, ok: median <= MOST },
    ];
  },
};

function isAmong(
  { act }: { readonly act: readonly number[] },
  known: readonly { readonly act: readonly number[] }[],
): boolean {
  return known.some((other) => other.act.join() === act.join());
}
