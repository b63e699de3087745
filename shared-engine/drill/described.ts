// (wish, seed) → a rack that fits and how rare such racks are, or in words why there is none.
import { stream } from '../deal/random.ts';
import type { Kernel } from '../rack/kernel.ts';
import type { Bag } from '../tiles/bag.ts';
import type { Wish } from './format.ts';
import { type Interval, wilson } from './interval.ts';
import { type Impossible, type Sampler, samplerFor } from './sampler.ts';
import type { WishPart } from './wish.ts';
import { impossibleWords, tooRareWords } from './wish-words.ts';

/** What a search may cost before a wish is given up: drawing a rack costs 1, asking the card about it 16 more. */
const BUDGET = 1_000_000;
const CARD_COST = 16;

/** Racks that are looked at to say how rare a kind is: at least so many, and enough for about so many that fit. */
const SURVEY = { least: 2_000, fitting: 40 } as const;

/** How many of all racks of this size fit: the share, and where it was counted in a sample its 95 % interval. */
export interface Rarity extends Interval {
  readonly share: number;
  /** Racks drawn with the jokers, flowers and multiples of the wish, and how many of them fitted; 0 of 0 where the share is exact. */
  readonly drawn: number;
  readonly fitted: number;
}

/** Why no rack was drawn: no rack can fit, or none was found. */
export interface NoRack {
  readonly ok: false;
  readonly code: 'impossible-wish' | 'too-rare';
  /** What to change. */
  readonly sentence: string;
  readonly parts: readonly WishPart[];
}

export type Drawn = { readonly ok: true; readonly rack: Bag; readonly tried: number } | NoRack;
export type Described = { readonly ok: true; readonly rack: Bag; readonly rarity: Rarity } | NoRack;

/** A rack of `size` tiles, each that fits equally likely; the same wish, card and seed give the same rack. */
export function drawRack(wish: Wish, size: number, kernel: Kernel, seed: string): Drawn {
  const sampler = samplerFor(wish, size, kernel);
  return sampler.ok ? search(sampler, wish, size, kernel, seed) : refused(wish, sampler, size, kernel);
}

/** A rack as `drawRack` draws it, with how rare such racks are. */
export function describeRack(wish: Wish, size: number, kernel: Kernel, seed: string): Described {
  const sampler = samplerFor(wish, size, kernel);
  if (!sampler.ok) return refused(wish, sampler, size, kernel);
  const found = search(sampler, wish, size, kernel, seed);
  return found.ok ? { ok: true, rack: found.rack, rarity: rarityOf(sampler, found.tried, seed) } : found;
}

function refused(wish: Wish, { parts }: Impossible, size: number, kernel: Kernel): NoRack {
  const sentence = impossibleWords(wish, parts, size, kernel);
  return { ok: false, code: 'impossible-wish', sentence, parts };
}

function search(sampler: Sampler, wish: Wish, size: number, kernel: Kernel, seed: string): Drawn {
  const random = stream(seed, 'wished rack');
  const reached = new Map<WishPart, number>();
  let tried = 0;
  for (let spent = 0; spent < BUDGET; spent++) {
    const rack = sampler.draw(random);
    tried++;
    const missed = sampler.misses(rack);
    if (missed === null) return { ok: true, rack, tried };
    spent += askedCard(sampler, missed) * CARD_COST;
    reached.set(missed, (reached.get(missed) ?? 0) + 1);
  }
  const high = sampler.share * wilson(0, tried).high;
  const { part, had, of } = strictest(sampler, reached, tried);
  const sentence = tooRareWords(wish, { size, kernel, tried, high, part, had, of });
  return { ok: false, code: 'too-rare', sentence, parts: [part] };
}

/** How many parts that need the card were looked at, up to the one that was missed or all. */
function askedCard({ later }: Sampler, missed: WishPart | null): number {
  const looked = missed === null ? later : later.slice(0, later.map(String).indexOf(missed) + 1);
  return looked.filter((part) => part === 'toGo' || part === 'family').length;
}

/**
 * The part that surely the fewest had of the racks that came to it, by the upper end of the interval: one rack that
 * missed a part says little about it.
 */
function strictest({ later }: Sampler, missed: ReadonlyMap<WishPart, number>, tried: number) {
  let of = tried;
  const looks = later.map((part) => {
    const had = of - (missed.get(part) ?? 0);
    const look = { part, had, of, high: of === 0 ? 1 : wilson(had, of).high };
    of = had;
    return look;
  });
  return looks.reduce((least, look) => (look.high < least.high ? look : least));
}

/**
 * The exact share of possible shapes times the share of racks of those shapes that fit. The second is counted in
 * racks of their own: how many are looked at follows from how long the search took, never from what is counted
 * here, so that Wilson's interval holds; the exact factor scales it.
 */
function rarityOf(sampler: Sampler, tried: number, seed: string): Rarity {
  const { share, later } = sampler;
  if (later.length === 0) return { share, low: share, high: share, drawn: 0, fitted: 0 };
  const random = stream(seed, 'how rare');
  const most = Math.floor(BUDGET / (1 + CARD_COST * askedCard(sampler, null)));
  const drawn = Math.min(most, Math.max(SURVEY.least, tried * SURVEY.fitting));
  let fitted = 0;
  for (let n = 0; n < drawn; n++) if (sampler.misses(sampler.draw(random)) === null) fitted++;
  const { low, high } = wilson(fitted, drawn);
  return { share: (share * fitted) / drawn, low: share * low, high: share * high, drawn, fitted };
}
