// The house card: its size, its balance over dealt racks, and points that come from measured difficulty.
import { HOUSE_CARD, houseCard } from '../../../shared-engine/card/house/card.ts';
import { nearestSections } from '../../../shared-engine/kernels/tiles-to-go/by-section.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { drawn, stream } from '../../../shared-engine/rules/deal/random.ts';
import { bagOf, FULL_SET, facesOf } from '../../../shared-engine/rules/tiles/bag.ts';
import {
  meanMissing,
  POINTS_DEALS,
  POINTS_SEED,
  pointsFor,
} from '../../../shared-engine/tools/card-data/difficulty.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const RACKS: Record<Size, number> = { small: 2_000, full: 10_000 };

export const proof: Proof = {
  summary: 'The house card has its patterns and sections, none of them nearest too often or too seldom.',
  async run({ seed, size }) {
    const racks = RACKS[size];
    const shares = nearestShares(seed, racks);
    return [
      ...counts(),
      ...houseCard().sections.map(({ name }, section): ProofRow => {
        const percent = shares[section]!;
        return {
          what: `${name} nearest in, % of ${racks} dealt racks of 13, ties split evenly`,
          value: Math.round(percent * 100) / 100,
          bar: '4 to 25',
          ok: percent >= 4 && percent <= 25,
        };
      }),
      pointsRow(size),
    ];
  },
};

function counts(): ProofRow[] {
  const { patterns, sections, hands } = houseCard();
  const shapes = new Set(
    HOUSE_CARD.patterns.map(({ groups }) =>
      groups
        .map(({ size }) => size)
        .sort()
        .join('-'),
    ),
  );
  return [
    { what: 'patterns', value: patterns.length, bar: 'at least 48', ok: patterns.length >= 48 },
    { what: 'sections', value: sections.length, bar: 'at least 8', ok: sections.length >= 8 },
    { what: 'shapes (partitions of 14)', value: shapes.size, bar: 'at least 12', ok: shapes.size >= 12 },
    {
      what: 'hands',
      value: hands.length,
      bar: '700 to 1500',
      ok: hands.length >= 700 && hands.length <= 1500,
    },
  ];
}

/** Percent of racks to which each section is nearest; a rack's tie is split evenly among its sections. */
function nearestShares(seed: string, racks: number): number[] {
  const card = houseCard();
  const kernel = createSwarKernel(card);
  const tiles = facesOf(FULL_SET);
  const shares = new Map(card.sections.map(({ id }) => [id, 0]));
  for (let deal = 0; deal < racks; deal++) {
    const nearest = nearestSections(kernel, bagOf(drawn(tiles, 13, stream(seed, `rack-${deal}`))));
    for (const section of nearest) {
      shares.set(section, shares.get(section)! + 100 / nearest.length / racks);
    }
  }
  return [...shares.values()];
}

/** The small size measures on a tenth of the deals and allows for the noise of that. */
function pointsRow(size: Size): ProofRow {
  const card = houseCard();
  const [deals, allowed] = size === 'full' ? [POINTS_DEALS, 0] : [POINTS_DEALS / 10, 2];
  const differences = meanMissing(card, POINTS_SEED, deals).map((missing, pattern) =>
    Math.abs(pointsFor(missing) - card.patterns[pattern]!.points),
  );
  const largest = Math.max(...differences);
  return {
    what: `largest difference between the points of a pattern and ten times its missing tiles (seed ${POINTS_SEED}, ${deals} deals)`,
    value: largest,
    bar: `at most ${allowed}`,
    ok: largest <= allowed,
  };
}
