// What the weight of a rack and a simulated play cost on the house card, beside tiles to go in the same run.
import { preparePlayCard } from '../../../shared-engine/analysis/play/play-card.ts';
import { createSimulator } from '../../../shared-engine/analysis/play/simulate.ts';
import { createTableValue } from '../../../shared-engine/analysis/win-probability/table-value.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { dealTiles } from '../../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import type { Bag } from '../../../shared-engine/rules/tiles/bag.ts';
import type { Bench } from '../bench.ts';

const DEALS = 400;
const LAPS = 10;

export const bench: Bench = {
  summary: 'Microseconds for the weight of a rack and milliseconds a simulated play on the house card.',
  async run({ seed }) {
    const card = houseCard();
    const { weight } = createTableValue(card);
    const kernel = createSwarKernel(card);
    const simulate = createSimulator(preparePlayCard(card));
    const deals = Array.from({ length: DEALS }, (_, n) => {
      const dealer = SEATS[n % 4]!;
      return { ...dealTiles({ seed: hexOf(seed, n), dealer }), dealer };
    });
    const racks = deals.flatMap((deal) => deal.racks);
    const near = racks
      .slice(0, 100)
      .flatMap((rack) => new Array<readonly Bag[]>(20).fill([rack, swapped(rack)]).flat());
    let turns = 0;
    const play = microseconds(deals, 1, (start) => {
      turns += simulate(start, stream(seed, 'play')).turns;
    });
    const us = (few: readonly Bag[], ask: (rack: Bag) => number) =>
      Math.round(microseconds(few, LAPS, ask) * 100) / 100;
    return {
      targets: card.hands.length,
      us_per_outlook: us(racks, (rack) => weight(rack, 0, 1)),
      us_per_near_outlook: us(near, (rack) => weight(rack, 0, 1)),
      us_per_to_go: us(racks, (rack) => kernel.toGo(rack)),
      us_per_near_to_go: us(near, (rack) => kernel.toGo(rack)),
      ms_per_play: Math.round(play) / 1000,
      discards_per_play: Math.round(turns / DEALS / 2),
    };
  },
};

/** Mean time of one answer, after one lap to warm up. */
function microseconds<T>(items: readonly T[], laps: number, ask: (item: T) => unknown): number {
  for (const item of items) ask(item);
  const started = performance.now();
  for (let lap = 0; lap < laps; lap++) for (const item of items) ask(item);
  return ((performance.now() - started) * 1000) / (laps * items.length);
}

/** A rack that differs by one tile. */
function swapped(rack: Bag): Bag {
  const removed = rack.findIndex((count) => count > 0);
  return rack.map((count, face) => (face === removed ? count - 1 : count));
}

function hexOf(seed: string, n: number): string {
  const random = stream(seed, `deal ${n}`);
  return Array.from({ length: 64 }, () => random.below(16).toString(16)).join('');
}
