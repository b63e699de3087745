// One seat of a style among three strong bots: what it holds at the close, against another style on the same deals.
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { finishRound } from '../../../shared-engine/bots/finish-round.ts';
import type { StyleName } from '../../../shared-engine/policy/styles.ts';
import { dealTiles } from '../../../shared-engine/rules/deal/deal.ts';
import { SEATS, type Seat } from '../../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import type { Table } from '../../../shared-engine/tools/win-model/games.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';
import { analyst, card } from './choices.ts';
import { chancesOn } from './table-chances.ts';

const chances = chancesOn(card);

export interface SeatEnd {
  readonly seat: Seat;
  readonly table: Table;
  /** Tiles to go of the seat, and its chance in 100 to win the play that would follow. */
  readonly toGo: number;
  readonly winProbability: number;
}

/** The same name and number deal the same tiles to the same seat, whatever its style. */
export function seatEnd(style: StyleName, name: string, nth: number): SeatEnd {
  const seat = SEATS[nth % 4]!;
  const dealer = SEATS[Math.floor(nth / 4) % 4]!;
  const opened = begin(openRound({ seed: seedNamed(`${name}/${nth}`), dealer }, { revealRacks: false }));
  const { round } = finishRound(opened, (view, random) =>
    chooseFor(view.record.seat === seat ? style : 'strong', view, houseKernel, random, () => analyst),
  );
  const table = { racks: round.racks, wall: dealTiles(round.deal).wall, dealer };
  return {
    seat,
    table,
    toGo: houseKernel.toGo(round.racks[seat]),
    winProbability: 100 * chances(table)[seat]!,
  };
}
