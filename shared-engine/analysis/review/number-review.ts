// A number chosen, reviewed: how many to pass blind, continue or stop, how many to ask for by courtesy.
import type { Kernel } from '../../kernels/index.ts';
import { thousandth } from '../comparison/estimate.ts';
import { spareTiles, type Worth } from './basis.ts';
import { type RankingOfPlayed, rankPasses } from './ranking.ts';
import type { OfferedAsk, OfferedMove, OfferedVote } from './replay-decisions.ts';
import type { NumberFindings } from './review.ts';
import { continueOrStop } from './second-charleston.ts';

const COUNTS: readonly number[] = [0, 1, 2, 3];

/** Each number with the best own tiles for it. */
export function reviewBlind(
  offer: OfferedMove,
  ranking: RankingOfPlayed | null,
  kernel: Kernel,
  worth: Worth,
): NumberFindings {
  const options = COUNTS.map((blind) => {
    const known = blind === offer.blind ? ranking : null;
    return {
      value: blind,
      nearness: (known ?? rankPasses({ ...offer, size: 3 - blind }, worth)).best.nearness,
    };
  });
  return findings(offer, { kind: 'blind', options, played: offer.blind }, kernel);
}

export function reviewVote(offer: OfferedVote, kernel: Kernel, worth: Worth): NumberFindings {
  const { continuing, stopping } = continueOrStop(offer, kernel, worth);
  const options = [
    { value: 0, nearness: thousandth(stopping) },
    { value: 1, nearness: thousandth(continuing) },
  ];
  return findings(offer, { kind: 'vote', options, played: offer.go ? 1 : 0 }, kernel);
}

/** The smaller number holds (rule Y1); the seat across is taken to ask for each number equally often. */
export function reviewAsk(offer: OfferedAsk, kernel: Kernel, worth: Worth): NumberFindings {
  const { rack, hidden } = offer;
  const agreed = COUNTS.map(
    (size) => rankPasses({ rack, hidden, step: 'courtesy-pass', size }, worth).best.nearness,
  );
  const options = COUNTS.map((asked) => ({
    value: asked,
    nearness: thousandth(
      COUNTS.reduce((sum, other) => sum + agreed[Math.min(asked, other)]!, 0) / COUNTS.length,
    ),
  }));
  return findings(offer, { kind: 'ask', options, played: offer.asked }, kernel);
}

function findings(
  offer: OfferedMove | OfferedVote | OfferedAsk,
  { kind, options, played }: Pick<NumberFindings, 'kind' | 'options' | 'played'>,
  kernel: Kernel,
): NumberFindings {
  const { step, by, rack } = offer;
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
    anotherStopped: offer.kind === 'vote' && offer.anotherStopped,
    askedAcross: offer.kind === 'ask' ? offer.askedAcross : null,
    loss: thousandth(best.nearness - own.nearness),
  };
}
