// Draws a rack that fits a constraint and says how rare such racks are, or why there is none.
import type { Kernel } from '../kernels/index.ts';
import { type Bag, stream } from '../rules/index.ts';
import type { ConstraintPart } from './constraint.ts';
import { impossibleMessage, tooRareMessage } from './constraint-messages.ts';
import type { Constraint } from './format.ts';
import { type Rarity, rarityOf, wilson } from './rarity.ts';
import { type Impossible, type Sampler, samplerFor } from './sampler.ts';

/** What a search may cost before it gives up: drawing a rack costs 1, measuring it on the card 12 more. */
const BUDGET = 600_000;
const CARD_COST = 12;

/** Why no rack was drawn: no rack can fit, or none was found. */
export interface NoRack {
  readonly ok: false;
  readonly code: 'impossible-constraint' | 'too-rare';
  /** What to change. */
  readonly message: string;
  readonly parts: readonly ConstraintPart[];
}

export type SampledRack = { readonly ok: true; readonly rack: Bag; readonly tried: number } | NoRack;
export type RackWithRarity = { readonly ok: true; readonly rack: Bag; readonly rarity: Rarity } | NoRack;

/** A rack of `size` tiles, each that fits equally likely; the same constraint, card and seed give the same rack. */
export function sampleRack(constraint: Constraint, size: number, kernel: Kernel, seed: string): SampledRack {
  const sampler = samplerFor(constraint, size, kernel);
  return sampler.ok
    ? search(sampler, { constraint, size, kernel }, seed)
    : rejected({ constraint, size, kernel }, sampler);
}

/** A rack as `sampleRack` draws it, with how rare such racks are. */
export function sampleRackWithRarity(
  constraint: Constraint,
  size: number,
  kernel: Kernel,
  seed: string,
): RackWithRarity {
  const sampler = samplerFor(constraint, size, kernel);
  if (!sampler.ok) return rejected({ constraint, size, kernel }, sampler);
  const found = search(sampler, { constraint, size, kernel }, seed);
  return found.ok
    ? { ok: true, rack: found.rack, rarity: rarityOf(sampler, found.tried, mostRacks(sampler), seed) }
    : found;
}

/** What a rack is drawn for: its constraint, its size and the card. */
interface Request {
  readonly constraint: Constraint;
  readonly size: number;
  readonly kernel: Kernel;
}

function rejected({ constraint, size, kernel }: Request, { parts }: Impossible): NoRack {
  const message = impossibleMessage(constraint, parts, size, kernel);
  return { ok: false, code: 'impossible-constraint', message, parts };
}

function search(sampler: Sampler, { constraint, size, kernel }: Request, seed: string): SampledRack {
  const random = stream(seed, 'wished rack');
  const missed = new Map<ConstraintPart, number>();
  const costOf = new Map(
    sampler.later.map((part, place) => [part, cardCost(sampler.later.slice(0, place + 1))]),
  );
  let tried = 0;
  for (let spent = 0; spent < BUDGET; spent++) {
    const rack = sampler.draw(random);
    tried++;
    const part = sampler.misses(rack);
    if (part === null) return { ok: true, rack, tried };
    spent += costOf.get(part)!;
    missed.set(part, (missed.get(part) ?? 0) + 1);
  }
  const high = sampler.share * wilson(0, tried).high;
  const { part, had, of } = strictest(sampler, missed, tried);
  const message = tooRareMessage(constraint, { size, kernel, tried, high, part, had, of });
  return { ok: false, code: 'too-rare', message, parts: [part] };
}

/** What it costs to check these parts of one rack. */
function cardCost(parts: readonly ConstraintPart[]): number {
  return CARD_COST * parts.filter((part) => part === 'toGo' || part === 'section').length;
}

/**
 * The part that the fewest of the racks checked for it had, by the upper end of the interval, because one rack that
 * missed a part says little.
 */
function strictest({ later }: Sampler, missed: ReadonlyMap<ConstraintPart, number>, tried: number) {
  let of = tried;
  const looks = later.map((part) => {
    const had = of - (missed.get(part) ?? 0);
    const look = { part, had, of, high: of === 0 ? 1 : wilson(had, of).high };
    of = had;
    return look;
  });
  return looks.reduce((least, look) => (look.high < least.high ? look : least));
}

/** How many racks the budget is enough for where each is checked in full. */
function mostRacks({ later }: Sampler): number {
  return Math.floor(BUDGET / (1 + cardCost(later)));
}
