// Racks as four bots leave them at the close of an exchange, and who then wins the simulated play.
import { NO_DANGER } from '../../analysis/play/danger.ts';
import { preparePlayCard } from '../../analysis/play/play-card.ts';
import { createSimulator, type PlayResult } from '../../analysis/play/simulate.ts';
import { chooseFor } from '../../bots/choose.ts';
import { finishRound } from '../../bots/finish-round.ts';
import type { CompiledCard } from '../../card/compiled.ts';
import type { SimdModule } from '../../kernels/simd/module.ts';
import { createSimdKernel } from '../../kernels/tiles-to-go/simd.ts';
import type { StyleName } from '../../policy/styles.ts';
import { dealTiles } from '../../rules/deal/deal.ts';
import { type Random, seedFrom, shuffled, stream } from '../../rules/deal/random.ts';
import { forFour, SEATS, type Seat } from '../../rules/deal/seat.ts';
import { openRound } from '../../rules/exchange/decide.ts';
import { begin } from '../../rules/exchange/evolve.ts';
import { type Bag, bagOf, facesOf } from '../../rules/tiles/bag.ts';
import type { Face, Four } from '../../rules/tiles/face.ts';

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

/** Four racks and the tiles nobody holds. */
export interface Table {
  readonly racks: Four<Bag>;
  readonly wall: readonly Face[];
  readonly dealer: Seat;
}

/** A table and how its plays ended, the wall shuffled anew for each. */
export interface TableGames extends Table {
  readonly results: readonly PlayResult[];
}

/** Tables on one card: the name of a round is its seed. */
export interface GameMaker {
  /** After an exchange of four bots. */
  tableOf(name: string): Table;
  /** The same name gives the same walls, whatever the racks. */
  played(table: Table, name: string, plays: number): TableGames;
}

/**
 * `simd` changes the time that games take and nothing else. In a `race` nobody's discards look at what lies open.
 */
export function gamesOn(card: CompiledCard, simd: SimdModule, race = false): GameMaker {
  const kernel = createSimdKernel(simd, card);
  const simulate = createSimulator(preparePlayCard(card), race ? NO_DANGER : undefined);
  return {
    tableOf(name) {
      const seed = seedFrom(stream(name, 'test seed'));
      const random = stream(seed, 'table');
      const dealer = SEATS[random.below(4)]!;
      const styles = forFour(() => MIX[random.below(MIX.length)]!);
      const opened = begin(openRound({ seed, dealer }, { revealRacks: false }));
      const { round } = finishRound(opened, (view, draws) =>
        chooseFor(styles[view.record.seat], view, kernel, draws),
      );
      return { racks: round.racks, wall: dealTiles(round.deal).wall, dealer };
    },
    played(table, name, plays) {
      const { racks, wall, dealer } = table;
      const results = Array.from({ length: plays }, (_, play) => {
        const chance = stream(name, `play ${play}`);
        return simulate({ racks, wall: shuffled(wall, chance), dealer }, chance);
      });
      return { ...table, results };
    },
  };
}

/** The table with one tile of a seat, no joker, in the wall, and one of the wall, drawn at random, in its place. */
export function withTileChanged({ racks, wall, dealer }: Table, seat: Seat, random: Random): Table {
  const rack = facesOf(racks[seat]);
  const own = rack.flatMap((face, place) => (face === 'joker' ? [] : [place]));
  const given = own[random.below(own.length)];
  if (given === undefined) return { racks, wall, dealer };
  const drawn = random.below(wall.length);
  const changed = bagOf(rack.with(given, wall[drawn]!));
  return {
    racks: forFour((other) => (other === seat ? changed : racks[other])),
    wall: wall.with(drawn, rack[given]!),
    dealer,
  };
}
