// How long a rack takes on the house card: the fast kernel beside its plain twin, and a bot's whole choice.
import {
  type Bag,
  bagOf,
  begin,
  chooseFor,
  createKernel,
  createPlainKernel,
  drawn,
  FULL_SET,
  facesOf,
  houseCard,
  nearness,
  openRound,
  SEATS,
  seatView,
  stream,
  takeFrom,
} from '../../../shared-engine/index.ts';
import type { Bench } from '../bench.ts';

export const bench: Bench = {
  summary: 'Nanoseconds a rack on the house card, packed against one target at a time.',
  async run({ seed }) {
    const card = houseCard();
    const fast = createKernel(card);
    const plain = createPlainKernel(card);
    const racks = dealtRacks(seed, 2000);
    const oneLess = racks.slice(0, 100).flatMap(withoutEach);
    const few = racks.slice(0, 100);
    const nsFast = nanoseconds(racks, (rack) => fast.toGo(rack));
    const nsPlain = nanoseconds(few, (rack) => plain.toGo(rack));
    const views = Array.from({ length: 50 }, (_, deal) => {
      const dealt = openRound({ seed: hexOf(seed, deal), dealer: 0 }, { layOpen: false });
      return SEATS.map((seat) => seatView(begin(dealt), seat));
    }).flat();
    const choice = (style: 'strong' | 'guarded') =>
      Math.round(nanoseconds(views, (view) => chooseFor(style, view, fast, stream(seed, style))) / 100) / 10;
    return {
      targets: card.targets.length,
      lines: card.lines.length,
      ns_per_rack: Math.round(nsFast),
      ns_per_rack_by_line: Math.round(nanoseconds(racks, (rack) => fast.toGoByLine(rack))),
      ns_per_rack_histogram: Math.round(nanoseconds(racks, (rack) => fast.histogram(rack))),
      ns_per_rack_one_tile_away: Math.round(nanoseconds(oneLess, (rack) => nearness(fast, rack))),
      plain_ns_per_rack: Math.round(nsPlain),
      speedup: Math.round((nsPlain / nsFast) * 10) / 10,
      us_per_strong_pass: choice('strong'),
      us_per_guarded_pass: choice('guarded'),
    };
  },
};

function dealtRacks(seed: string, count: number): Bag[] {
  const random = stream(seed, 'bench/kernel');
  return Array.from({ length: count }, () => bagOf(drawn(facesOf(FULL_SET), 13, random)));
}

function hexOf(seed: string, deal: number): string {
  const random = stream(seed, `bench/deal/${deal}`);
  return Array.from({ length: 64 }, () => random.below(16).toString(16)).join('');
}

function withoutEach(rack: Bag): Bag[] {
  return [...new Set(facesOf(rack))].map((face) => takeFrom(rack, [face]) ?? rack);
}

/** The best of five passes over the items, each at least 60 ms long, after one to warm up. */
function nanoseconds<T>(items: readonly T[], ask: (item: T) => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let pass = 0; pass < 6; pass++) {
    const started = performance.now();
    let asked = 0;
    while (performance.now() - started < 60) {
      for (const item of items) ask(item);
      asked += items.length;
    }
    if (pass > 0) best = Math.min(best, ((performance.now() - started) * 1e6) / asked);
  }
  return best;
}
