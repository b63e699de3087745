// Why one pass is better: the closest hands against the kernel, and the one tile that matters.
import { describe, expect, test } from 'vitest';
import { DEALS_PER_BATCH } from '../../shared-engine/analysis/belief/particle-filter.ts';
import { actionOf } from '../../shared-engine/analysis/comparison/alternatives.ts';
import type { DealSource } from '../../shared-engine/analysis/comparison/sampled-deals.ts';
import { analyzeDecision, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { RESULT_WIDTH } from '../../shared-engine/analysis/rollouts/batch.ts';
import { whyBetter } from '../../shared-engine/analysis/why/choice-why.ts';
import {
  createHandFinder,
  goneTiles,
  idleJokers,
  lackingInPairs,
} from '../../shared-engine/analysis/why/closest-hands.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { sectionsInReach } from '../../shared-engine/kernels/tiles-to-go/by-section.ts';
import { bagOf, FULL_SET, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, type Face, faceIndex } from '../../shared-engine/rules/tiles/face.ts';
import { analystOf } from '../kit/analysts.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';

const card = houseCard();
const analyst = analystOf(card);
const RECORDS = records('why', 8);

describe('the closest hands of a rack', () => {
  const finder = createHandFinder(card);

  test('are as far away as the kernel says, and are all there are, like those one tile farther away', () => {
    let misses = 0;
    for (const { start, steps } of RECORDS) {
      for (const tiles of [start, ...steps.flatMap((step) => (step.kind === 'move' ? [step.gave] : []))]) {
        const rack = bagOf(tiles);
        const { toGo, hands, farther } = finder.closest(Uint8Array.from(rack), 0);
        expect(toGo).toBe(houseKernel.toGo(rack));
        expect(hands.length).toBeGreaterThan(0);
        expect(finder.sectionsWithin(rack, toGo + 1)).toBe(sectionsInReach(houseKernel, rack).length);
        // By the definition of one hand, written out again.
        for (const [index, { singles, groups }] of card.hands.entries()) {
          const jokers = rack[faceIndex('joker')]!;
          const all = singles.reduce(
            (sum, single, f) => sum + Math.min(rack[f]!, single + groups[f]!),
            jokers,
          );
          const limit = singles.reduce((sum, single, f) => sum + groups[f]! + Math.min(rack[f]!, single), 0);
          const away = 14 - Math.min(all, limit) - toGo;
          if ((away === 0) !== hands.includes(index) || (away === 1) !== farther.includes(index)) misses++;
        }
      }
    }
    expect(misses).toBe(0);
  });

  test('lack in singles and pairs what the rack does not hold of them', () => {
    const hand = card.hands.find(({ singles }) => singles.includes(2))!;
    expect(lackingInPairs(hand, new Uint8Array(36), 0)).toBe(hand.singles.reduce((sum, n) => sum + n, 0));
    expect(lackingInPairs(hand, Uint8Array.from(hand.singles), 0)).toBe(0);
  });
});

describe('a hand that is closest', () => {
  const hand = card.hands.find(({ singles, groups }) => singles.includes(2) && groups.includes(3))!;
  const paired = hand.singles.indexOf(2);
  const grouped = hand.groups.indexOf(3);
  const jokers = faceIndex('joker');
  const rackOf = (counts: Readonly<Record<number, number>>): Uint8Array =>
    Uint8Array.from({ length: FACE_COUNT }, (_, face) => counts[face] ?? 0);

  test('has a place for jokers only in groups of three or more', () => {
    const room = hand.groups.reduce((sum, count) => sum + count, 0);
    expect(idleJokers(hand, rackOf({ [jokers]: room }), 0)).toBe(0);
    expect(idleJokers(hand, rackOf({ [jokers]: room + 1 }), 0)).toBe(1);
    expect(idleJokers(hand, rackOf({ [jokers]: room, [grouped]: 2 }), 0)).toBe(2);
    // Tiles of a pair take no place from jokers.
    expect(idleJokers(hand, rackOf({ [jokers]: room, [paired]: 2 }), 0)).toBe(0);
  });

  test('waits for tiles that are gone where the other racks hold all that are left', () => {
    const tables = (others: number) => {
      const racks = new Uint8Array(4 * FACE_COUNT);
      racks[FACE_COUNT + paired] = others;
      return racks;
    };
    const left = FULL_SET[paired]!;
    expect(goneTiles(hand, tables(0), 0)).toBe(0);
    expect(goneTiles(hand, tables(left - 1), 0)).toBe(1);
    expect(goneTiles(hand, tables(left), 0)).toBe(2);
  });
});

/** Seat 0 wins 50 in 100, less what each tile costs that it passes. */
function gameWithCosts(costs: Readonly<Partial<Record<Face, number>>>): DealSource {
  const byFace = new Map(Object.entries(costs).map(([face, cost]) => [faceIndex(face as Face), cost]));
  return {
    rollOut({ batches }, actions) {
      const deals = batches * DEALS_PER_BATCH;
      const values = new Float64Array(deals * actions.length * RESULT_WIDTH);
      for (let deal = 0; deal < deals; deal++) {
        for (const [a, action] of actions.entries()) {
          const cost = action
            .of(deal)
            .slice(0, 3)
            .reduce((sum, face) => sum + (byFace.get(face) ?? 0), 0);
          values.fill(
            50 - cost,
            (deal * actions.length + a) * RESULT_WIDTH,
            (deal * actions.length + a + 1) * RESULT_WIDTH,
          );
        }
      }
      return { deals, actions: actions.length, values };
    },
  };
}

describe('the one tile that is called the reason', () => {
  const record = RECORDS.find(({ seat }) => seat === 0)!;
  const { situation } = decisionsIn(record)[0]!.offered;
  const alternativeOf = (faces: readonly Face[]) => {
    const tiles = faces.map(faceIndex).sort((a, b) => a - b);
    return { tiles, number: null, action: actionOf(tiles, 3), keptValue: 0 };
  };
  const reasonWith = (
    costs: Readonly<Partial<Record<Face, number>>>,
    played: readonly Face[] = ['white', 'bam-1', 'dot-2'],
  ) =>
    whyBetter(analyst, gameWithCosts(costs), {
      situation,
      seeds: { deals: 1, noise: 1 },
      played: alternativeOf(played),
      named: alternativeOf(['red', 'bam-1', 'crak-9']),
      batches: { ends: 1, pick: 1, confirm: 1 },
    }).reason;

  test('brings at least half of the difference when it alone is exchanged', () => {
    expect(reasonWith({ white: 6, 'dot-2': 2 })).toMatchObject({ keep: 'white', share: 6 / 8 });
    expect(reasonWith({ white: 2, 'dot-2': 6, red: 1 })).toEqual({
      keep: 'dot-2',
      pass: 'crak-9',
      share: 6 / 7,
    });
    expect(reasonWith({ white: 4, 'dot-2': 4 })).toMatchObject({ share: 0.5 });
  });

  test('is none where every tile brings less than half, or where nothing is better', () => {
    const three: readonly Face[] = ['white', 'bam-5', 'dot-2'];
    expect(reasonWith({ white: 3, 'dot-2': 3, 'bam-5': 3 }, three)).toBeNull();
    expect(reasonWith({ red: 4 })).toBeNull();
    expect(reasonWith({})).toBeNull();
  });
});

const decided = RECORDS.flatMap(decisionsIn);
const found = RECORDS.flatMap((record) =>
  decisionsIn(record).map((_, nth) => analyzeDecision(analyst, record, nth, { budget: GLANCE })),
);

describe('the why of a choice', () => {
  test('is there where a better choice is told, and only there; of a number it has no tiles; its shares are shares', () => {
    const told = found.flatMap(({ why }) => why ?? []);
    expect(told.length).toBeGreaterThan(8);
    for (const { verdict, why, finalists, bestAlternative } of found) {
      const named = bestAlternative === null ? null : finalists[bestAlternative]!;
      expect(why !== null).toBe(verdict === 'costly' || verdict === 'a-little-worse');
      expect(why?.farther != null).toBe(why !== null && named?.number === null);
      const gives = why === null ? 0 : why.keep.length + why.pass.length;
      expect(gives > 0).toBe(why !== null && named?.number === null);
    }
    for (const { deals, keep, pass, farther, sections, concealed, handsNear } of told) {
      // The closest hand is one of those near.
      expect(handsNear.named).toBeGreaterThanOrEqual(1);
      expect(handsNear.named).toBeLessThanOrEqual(card.patterns.length);
      expect(deals).toBe(GLANCE.why.ends * DEALS_PER_BATCH);
      const shares = farther === null ? [] : [farther.shares];
      const beside = [...Object.values(sections), ...shares, concealed].flatMap(({ played, named }) => [
        played,
        named,
      ]);
      for (const share of [...keep, ...pass].map((use) => use.share).concat(beside)) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
      const both = Object.values(sections);
      expect(both.reduce((sum, { named }) => sum + named, 0)).toBeLessThanOrEqual(1.001);
    }
  });

  test('tells how far away the tiles kept are, as the kernel counts them, or the whole rack where a number is chosen', () => {
    let passes = 0;
    for (const [nth, { why, finalists, played, bestAlternative }] of found.entries()) {
      if (why === null || bestAlternative === null) continue;
      const { rack } = decided[nth]!.offered.situation;
      const [own, named] = [played, bestAlternative].map((place) => finalists[place]!);
      const kept = (tiles: readonly Face[]) => houseKernel.toGo(takeFrom(rack, tiles)!);
      if (own!.number === null) passes++;
      expect(why.toGoKept).toEqual({ played: kept(own!.tiles), named: kept(named!.tiles) });
    }
    expect(passes).toBeGreaterThan(4);
  });

  test('repeats to the byte', () => {
    const [record] = RECORDS;
    const nth = decisionsIn(record!).findIndex(({ subject }) => subject === 'tiles');
    const again = () => analyzeDecision(analyst, record!, nth, { budget: GLANCE });
    expect(JSON.stringify(again())).toBe(JSON.stringify(again()));
  });
});
