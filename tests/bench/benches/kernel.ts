// How long a rack takes: the SIMD module beside TypeScript, on cards of three sizes, and a bot's whole choice.
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import type { CompiledCard } from '../../../shared-engine/card/compiled.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createPassSelector } from '../../../shared-engine/kernels/pass-selection/simd.ts';
import { loadSimd, NO_SIMD } from '../../../shared-engine/kernels/simd/module.ts';
import { createReferenceKernel } from '../../../shared-engine/kernels/tiles-to-go/reference.ts';
import { type BatchKernel, createSimdKernel } from '../../../shared-engine/kernels/tiles-to-go/simd.ts';
import { drawn, stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import { PASS_SIZE } from '../../../shared-engine/rules/exchange/schedule.ts';
import { type Bag, bagOf, FULL_SET, facesOf } from '../../../shared-engine/rules/tiles/bag.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { flatRacks } from '../../kit/racks.ts';
import { type Bench, type Figures, nanoseconds } from '../bench.ts';

/** Hands of a smaller and of a very large card, beside those of the house card. */
const SMALL = 729;
const LARGE = 5000;

export const bench: Bench = {
  summary: 'Nanoseconds a rack: SIMD in batches and one by one, packed words, one hand at a time.',
  async run({ seed }) {
    const simd = await loadSimd();
    if (simd.kind === 'unavailable') throw new Error(simd.reason);
    const house = houseCard();
    const racks = dealtRacks(seed, 2000);
    const few = racks.slice(0, 50);
    const [flat, flatFew] = [flatRacks(racks), flatRacks(few)];
    const ofSize = (hands: number): Figures => {
      const card = resized(house, hands);
      const fast = createSimdKernel(simd, card);
      const swar = createSimdKernel(NO_SIMD, card);
      const batch = nanoseconds(racks.length, () => fast.toGoMany(flat));
      const words = nanoseconds(few.length, () => swar.toGoMany(flatFew));
      const [removal, swarRemoval] = [simd, NO_SIMD].map((which) => {
        const select = createPassSelector(which, card);
        return nanoseconds(few.length * PASS_SIZE, () => select(flatFew));
      });
      return {
        targets: hands,
        ns_per_rack: Math.round(batch),
        ns_per_rack_one_call_each: Math.round(eachOf(racks, (rack) => fast.toGo(rack))),
        plain_ns_per_rack: Math.round(words),
        speedup: tenth(words / batch),
        ns_per_removal: Math.round(removal!),
        plain_ns_per_removal: Math.round(swarRemoval!),
      };
    };
    const reference = createReferenceKernel(house);
    const fast = createSimdKernel(simd, house);
    return {
      ...ofSize(house.hands.length),
      ns_per_rack_by_line: Math.round(eachOf(racks, (rack) => fast.toGoByPattern(rack))),
      ns_per_rack_histogram: Math.round(eachOf(racks, (rack) => fast.histogram(rack))),
      ns_per_rack_one_target_at_a_time: Math.round(eachOf(few.slice(0, 10), (rack) => reference.toGo(rack))),
      us_per_strong_pass: choice(seed, 'strong', fast),
      us_per_guarded_pass: choice(seed, 'guarded', fast),
      ...named('small', ofSize(SMALL)),
      ...named('large', ofSize(LARGE)),
    };
  },
};

function named(size: string, figures: Figures): Figures {
  return Object.fromEntries(Object.entries(figures).map(([name, value]) => [`${size}_${name}`, value]));
}

/** The same card with so many hands, left out or repeated evenly. */
function resized(card: CompiledCard, hands: number): CompiledCard {
  const step = card.hands.length / hands;
  return {
    ...card,
    hands: Array.from({ length: hands }, (_, nth) => card.hands[Math.floor(nth * step)]!),
  };
}

function dealtRacks(seed: string, count: number): Bag[] {
  const random = stream(seed, 'bench/kernel');
  return Array.from({ length: count }, () => bagOf(drawn(facesOf(FULL_SET), 13, random)));
}

function choice(seed: string, style: 'strong' | 'guarded', kernel: BatchKernel): number {
  const views = Array.from({ length: 25 }, (_, deal) => {
    const dealt = openRound({ seed: hexOf(seed, deal), dealer: 0 }, { revealRacks: false });
    return SEATS.map((seat) => seatView(begin(dealt), seat));
  }).flat();
  return tenth(eachOf(views, (view) => chooseFor(style, view, kernel, stream(seed, style))) / 1000);
}

function hexOf(seed: string, deal: number): string {
  const random = stream(seed, `bench/deal/${deal}`);
  return Array.from({ length: 64 }, () => random.below(16).toString(16)).join('');
}

function eachOf<T>(items: readonly T[], ask: (item: T) => unknown): number {
  return nanoseconds(items.length, () => {
    for (const item of items) ask(item);
  });
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
