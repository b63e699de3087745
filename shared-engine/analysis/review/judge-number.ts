// A number chosen, judged: how many to pass blind, go on or stop, how many to ask for across.
import type { Kernel } from '../../kernels/tiles-to-go/kernel.ts';
import { type RankingOfPlayed, rankPasses } from './ranking.ts';
import type { OfferedAsk, OfferedMove, OfferedVote } from './replay-decisions.ts';
import type { NumberReview } from './review.ts';
import { thousandth } from './rounding.ts';
import { goOrStop } from './second-charleston.ts';
import { spareTiles, type Worth } from './worth.ts';

type Judged = Omit<NumberReview, 'words' | 'judgement'>;

const COUNTS: readonly number[] = [0, 1, 2, 3];

/** Each number with the best own tiles for it. */
export function judgeBlind(
  offer: OfferedMove,
  ranking: RankingOfPlayed | null,
  kernel: Kernel,
  worth: Worth,
): Judged {
  const options = COUNTS.map((blind) => {
    const known = blind === offer.blind ? ranking : null;
    return {
      value: blind,
      nearness: (known ?? rankPasses({ ...offer, size: 3 - blind }, worth)).best.nearness,
    };
  });
  return judged('blind', offer.step, offer, options, offer.blind, kernel);
}

export function judgeVote(offer: OfferedVote, kernel: Kernel, worth: Worth): Judged {
  const { go, stop } = goOrStop(offer.rack, offer.unseen, kernel, worth);
  const options = [
    { value: 0, nearness: thousandth(stop) },
    { value: 1, nearness: thousandth(go) },
  ];
  return judged('vote', 'vote', offer, options, offer.go ? 1 : 0, kernel);
}

/** The smaller number holds (rule Y1); the seat across is taken to ask for each number equally often. */
export function judgeAsk(offer: OfferedAsk, kernel: Kernel, worth: Worth): Judged {
  const { rack, unseen } = offer;
  const agreed = COUNTS.map(
    (size) => rankPasses({ rack, unseen, step: 'courtesy-pass', size }, worth).best.nearness,
  );
  const options = COUNTS.map((asked) => ({
    value: asked,
    nearness: thousandth(
      COUNTS.reduce((sum, other) => sum + agreed[Math.min(asked, other)]!, 0) / COUNTS.length,
    ),
  }));
  return judged('ask', 'courtesy-ask', offer, options, offer.asked, kernel);
}

function judged(
  kind: NumberReview['kind'],
  step: NumberReview['step'],
  { by, rack }: OfferedMove | OfferedVote | OfferedAsk,
  options: NumberReview['options'],
  played: number,
  kernel: Kernel,
): Judged {
  const own = options.find(({ value }) => value === played)!;
  // Among equals the number chosen is the best.
  const best = options.reduce((most, option) => (option.nearness > most.nearness ? option : most), own);
  return {
    kind,
    step,
    by,
    toGo: kernel.toGo(rack),
    spare: spareTiles(kernel, rack),
    options,
    played,
    best: best.value,
    loss: thousandth(best.nearness - own.nearness),
  };
}
