// Where a choice leads: the racks that a seat ends the exchange with, and the hands that these are closest to.
import type { CompiledCard } from '../../card/index.ts';
import { FACE_COUNT } from '../../rules/index.ts';
import type { Belief } from '../belief/belief.ts';
import { type BatchRange, DEALS_PER_BATCH } from '../belief/particle-filter.ts';
import type { Situation } from '../belief/situation.ts';
import type { Seeds } from '../comparison/sampled-deals.ts';
import { DEAL_BYTES, type Leaf } from '../rollouts/batch.ts';
import { createExchangeRollout } from '../rollouts/exchange.ts';
import {
  type ClosestHands,
  goneTiles,
  type HandFinder,
  idleJokers,
  lackingInPairs,
} from './closest-hands.ts';

/** What a choice ends in over many sampled deals; hands at one distance share a deal evenly. */
export interface RoundEnds {
  readonly deals: number;
  /** Means: tiles to go, and tiles of singles and pairs that the closest hands lack. */
  readonly toGo: number;
  readonly lacking: number;
  /** Means over the closest hands: tiles that they lack and the wall has no more of, and jokers they have no place for. */
  readonly gone: number;
  readonly idleJokers: number;
  /** Mean: patterns of the card with a hand at most one tile farther away than the closest. */
  readonly handsNear: number;
  /** Points a game: own chance to win, times the points of the closest hands. */
  readonly points: number;
  /** The share of the closest hands that must stay concealed. */
  readonly concealed: number;
  /** By section index, the share of the deals in which it is the closest; several that are share it evenly. */
  readonly sections: readonly number[];
  /** The share of the closest hands that want at least so many tiles of this face. */
  uses(face: number, copies: number): number;
  /** By section index, the share of the hands one tile farther away that are of it and use this face. */
  usesFarther(face: number): readonly number[];
}

export interface EndTask {
  readonly situation: Situation;
  readonly seeds: Seeds;
  readonly range: BatchRange;
}

/** Plays an action to the close in sampled deals, as the rollouts do. */
export type PlayToEnds = (task: EndTask, action: readonly number[]) => RoundEnds;

export function createPlayToEnds(
  card: CompiledCard,
  leaf: Leaf,
  belief: Belief,
  finder: HandFinder,
): PlayToEnds {
  const exchange = createExchangeRollout(card, leaf);
  return ({ situation, seeds, range }, action) => {
    const { seat, dealer, terms, step, agreed } = situation;
    const dealt = belief.sampledDeals(situation, seeds.deals, range);
    const deals = range.batches * DEALS_PER_BATCH;
    const tables = new Uint8Array(deals * DEAL_BYTES);
    const chances = new Float64Array(deals);
    const bytes = Int8Array.from(action);
    const out = new Float64Array(8);
    for (let deal = 0; deal < deals; deal++) {
      exchange.begin(
        { seed: seeds.noise, seat, dealer, terms, step, agreed, end: 'close', neighbors: 'alike' },
        range.first * DEALS_PER_BATCH + deal,
      );
      exchange.play(dealt.subarray(deal * DEAL_BYTES, (deal + 1) * DEAL_BYTES), bytes, out);
      for (let other = 0; other < 4; other++) {
        tables.set(exchange.rackOf(other), deal * DEAL_BYTES + other * FACE_COUNT);
      }
      chances[deal] = out[seat]! / 100;
    }
    const ownAt = (deal: number) => deal * DEAL_BYTES + seat * FACE_COUNT;
    const closest = Array.from({ length: deals }, (_, deal) => finder.closest(tables, ownAt(deal)));
    return endsOf(card, { seat, tables, chances, closest });
  };
}

/** How the deals ended: four racks each, the seat's own chance to win, and the hands that its rack is closest to. */
interface Ends {
  readonly seat: number;
  readonly tables: Uint8Array;
  readonly chances: Float64Array;
  readonly closest: readonly ClosestHands[];
}

function endsOf(card: CompiledCard, { seat, tables, chances, closest }: Ends): RoundEnds {
  const deals = closest.length;
  const handAt = (index: number) => card.hands[index]!;
  const patternAt = (index: number) => card.patterns[handAt(index).pattern]!;
  const ownAt = (deal: number) => deal * DEAL_BYTES + seat * FACE_COUNT;
  const tableAt = (deal: number) => tables.subarray(deal * DEAL_BYTES, (deal + 1) * DEAL_BYTES);
  /** The mean over the deals of the mean over the closest hands. */
  const mean = (of: (hand: number, deal: number) => number): number =>
    closest.reduce(
      (sum, { hands }, deal) =>
        sum + hands.reduce((part, hand) => part + of(hand, deal), 0) / hands.length / deals,
      0,
    );
  const sections = card.sections.map(() => 0);
  for (const { hands } of closest) {
    const near = new Set(hands.map((hand) => patternAt(hand).section));
    for (const section of near) sections[section]! += 1 / near.size / deals;
  }
  return {
    deals,
    toGo: closest.reduce((sum, { toGo }) => sum + toGo / deals, 0),
    lacking: mean((hand, deal) => lackingInPairs(handAt(hand), tables, ownAt(deal))),
    gone: mean((hand, deal) => goneTiles(handAt(hand), tableAt(deal), seat)),
    idleJokers: mean((hand, deal) => idleJokers(handAt(hand), tables, ownAt(deal))),
    handsNear: closest.reduce((sum, { hands, farther }) => {
      const near = new Set([...hands, ...farther].map((hand) => handAt(hand).pattern));
      return sum + near.size / deals;
    }, 0),
    points: mean((hand, deal) => chances[deal]! * patternAt(hand).points),
    concealed: mean((hand) => Number(patternAt(hand).concealed)),
    sections,
    uses: (face, copies) =>
      mean((hand) => Number(handAt(hand).singles[face]! + handAt(hand).groups[face]! >= copies)),
    usesFarther: (face) => {
      const shares = card.sections.map(() => 0);
      const some = closest.filter(({ farther }) => farther.length > 0);
      for (const { farther } of some) {
        for (const hand of farther) {
          const isUsed = handAt(hand).singles[face]! + handAt(hand).groups[face]! > 0;
          if (isUsed) shares[patternAt(hand).section]! += 1 / farther.length / some.length;
        }
      }
      return shares;
    },
  };
}
