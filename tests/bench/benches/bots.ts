// How long the bots take to choose.
import { createAnalyst } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import { STYLES, type StyleName } from '../../../shared-engine/policy/styles.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { opened, playOn, seatsToAct } from '../../kit/rounds.ts';
import type { Bench, Figures } from '../bench.ts';

const ROUNDS = 8;

export const bench: Bench = {
  summary: 'Milliseconds for one choice of a bot, by style: the median and the slowest, first one apart.',
  async run({ seed }) {
    const analyst = createAnalyst(houseKernel.card, await loadSimd());
    const views = viewsOf(seed);
    const choose = (style: StyleName, view: (typeof views)[0]) => {
      const started = performance.now();
      chooseFor(style, view, houseKernel, stream(seed, style), () => analyst);
      return performance.now() - started;
    };
    const figures: Record<string, Figures[string]> = { choices: views.length };
    for (const style of STYLES) {
      const [, ...times] = views.map((view) => choose(style, view));
      times.sort((a, b) => a - b);
      figures[`${style}Ms`] = `${tenth(times[Math.floor(times.length / 2)]!)} ${tenth(times.at(-1)!)}`;
    }
    return figures;
  },
};

/** One seat's view at every state of a few rounds in which it has something to answer. */
function viewsOf(seed: string) {
  const random = stream(seed, 'states');
  const views: ReturnType<typeof seatView>[] = [];
  for (let n = 0; n < ROUNDS; n++) {
    let played = opened(`${seed} ${n}`);
    while (played.round.phase !== 'closed') {
      const waiting = seatsToAct(played.round);
      if (waiting.length === 4) views.push(seatView(played.round, waiting[n % 4]!));
      let more = 1;
      played = playOn(played, random, () => more-- <= 0);
    }
  }
  return views;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
