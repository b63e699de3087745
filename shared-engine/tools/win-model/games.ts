// Racks as four bots leave them at the close of an exchange, and who then wins the simulated play.
import { preparePlayCard } from '../../analysis/play/play-card.ts';
import { createSimulator } from '../../analysis/play/simulate.ts';
import { chooseFor } from '../../bots/choose.ts';
import { finishRound } from '../../bots/finish-round.ts';
import type { CompiledCard } from '../../card/compiled.ts';
import type { SimdModule } from '../../kernels/simd/module.ts';
import { createSimdKernel } from '../../kernels/tiles-to-go/simd.ts';
import type { StyleName } from '../../policy/styles.ts';
import { dealTiles } from '../../rules/deal/deal.ts';
import { seedFrom, shuffled, stream } from '../../rules/deal/random.ts';
import { forFour, SEATS } from '../../rules/deal/seat.ts';
import { openRound } from '../../rules/exchange/decide.ts';
import { begin } from '../../rules/exchange/evolve.ts';
import type { Bag } from '../../rules/tiles/bag.ts';

/** The styles of the table that the model is meant for, mostly players who know what they do; each seat draws one. */
const MIX: readonly StyleName[] = [
  'strong',
  'strong',
  'guarded',
  'guarded',
  'typical',
  'typical',
  'casual',
  'random',
];

/** One seat after one exchange. */
export interface Sample {
  readonly rack: Bag;
  /** Seats to the right of the dealer. */
  readonly place: number;
  /** Of `plays` plays from these four racks with the wall shuffled anew, those that this seat won. */
  readonly wins: number;
  readonly plays: number;
}

/** Makes games on one card: the name of a round is its seed. `simd` changes the time they take and nothing else. */
export function gamesOn(card: CompiledCard, simd: SimdModule): (name: string, plays: number) => Sample[] {
  const kernel = createSimdKernel(simd, card);
  const simulate = createSimulator(preparePlayCard(card));
  return (name, plays) => {
    const seed = seedFrom(stream(name, 'test seed'));
    const random = stream(seed, 'table');
    const dealer = SEATS[random.below(4)]!;
    const styles = forFour(() => MIX[random.below(MIX.length)]!);
    const { round } = finishRound(begin(openRound({ seed, dealer }, { revealRacks: false })), (view, draws) =>
      chooseFor(styles[view.record.seat], view, kernel, draws),
    );
    const { wall } = dealTiles(round.deal);
    const wins = [0, 0, 0, 0];
    for (let play = 0; play < plays; play++) {
      const chance = stream(seed, `play ${play}`);
      const { winner } = simulate({ racks: round.racks, wall: shuffled(wall, chance), dealer }, chance);
      if (winner !== null) wins[winner]!++;
    }
    return SEATS.map((seat) => ({
      rack: round.racks[seat],
      place: (seat + 4 - dealer) % 4,
      wins: wins[seat]!,
      plays,
    }));
  };
}
