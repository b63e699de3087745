// Draws a rack that fits a constraint and says how rare such racks are, or why there is none.
import type { Kernel } from '../kernels/index.ts';
import { type Bag, stream } from '../rules/index.ts';
import type { ConstraintPart } from './constraint.ts';
import { impossibleMessage, tooRareMessage, usedUpMessage } from './constraint-messages.ts';
import type { Constraint } from './format.ts';
import { type Rarity, rarityOf, wilson } from './rarity.ts';
import { type Impossible, type Sampler, samplerFor } from './sampler.ts';
import { DEAL_BUDGET, measureCost, type SearchBudget, searchBudget } from './search-budget.ts';

/** Why no rack was drawn: none can fit, none was found, or searches before this one had used the budget up. */
export interface NoRack {
  readonly ok: false;
  readonly code: 'impossible-constraint' | 'too-rare' | 'used-up';
  /** What to change. */
  readonly message: string;
  readonly parts: readonly ConstraintPart[];
}

export type SampledRack = { readonly ok: true; readonly rack: Bag; readonly tried: number } | NoRack;
export type RackWithRarity = { readonly ok: true; readonly rack: Bag; readonly rarity: Rarity } | NoRack;

/** What a rack is drawn for: its constraint, its size and the card. */
export interface RackRequest {
  readonly constraint: Constraint;
  readonly size: number;
  readonly kernel: Kernel;
}

/**
 * A rack of `size` tiles, each that fits equally likely; the same request and seed give the same rack. Other searches may
 * share its budget.
 */
export function sampleRack(
  request: RackRequest,
  seed: string,
  budget: SearchBudget = searchBudget(DEAL_BUDGET),
): SampledRack {
  const { constraint, size, kernel } = request;
  const sampler = samplerFor(constraint, size, kernel);
  return sampler.ok ? search(sampler, request, seed, budget) : rejected(request, sampler);
}

/** A rack as `sampleRack` draws it, with how rare such racks are. */
export function sampleRackWithRarity(request: RackRequest, seed: string): RackWithRarity {
  const { constraint, size, kernel } = request;
  const sampler = samplerFor(constraint, size, kernel);
  if (!sampler.ok) return rejected(request, sampler);
  const found = search(sampler, request, seed, searchBudget(DEAL_BUDGET));
  if (!found.ok) return found;
  const rarity = rarityOf(sampler, found.tried, mostRacks(sampler, kernel), seed);
  return { ok: true, rack: found.rack, rarity };
}

function rejected({ constraint, size, kernel }: RackRequest, { parts }: Impossible): NoRack {
  const message = impossibleMessage(constraint, parts, size, kernel);
  return { ok: false, code: 'impossible-constraint', message, parts };
}

function search(
  sampler: Sampler,
  { constraint, size, kernel }: RackRequest,
  seed: string,
  budget: SearchBudget,
): SampledRack {
  const random = stream(seed, 'wished rack');
  const missed = new Map<ConstraintPart, number>();
  const costOf = new Map(
    sampler.later.map((part, place) => [part, costOfRack(sampler.later.slice(0, place + 1), kernel)]),
  );
  let tried = 0;
  for (let spent = 0; spent < DEAL_BUDGET; ) {
    const rack = sampler.draw(random);
    tried++;
    const part = sampler.misses(rack);
    const cost = part === null ? costOfRack(sampler.later, kernel) : costOf.get(part)!;
    const isLeft = budget.spend(cost);
    if (part === null) return { ok: true, rack, tried };
    spent += cost;
    missed.set(part, (missed.get(part) ?? 0) + 1);
    if (!isLeft && spent < DEAL_BUDGET) {
      const strict = strictest(sampler, missed, tried).part;
      return {
        ok: false,
        code: 'used-up',
        message: usedUpMessage(constraint, strict, kernel),
        parts: [strict],
      };
    }
  }
  const high = sampler.share * wilson(0, tried).high;
  const { part, had, of } = strictest(sampler, missed, tried);
  const message = tooRareMessage(constraint, { size, kernel, tried, high, part, had, of });
  return { ok: false, code: 'too-rare', message, parts: [part] };
}

/** What it costs to draw one rack and to check these parts of it. */
function costOfRack(parts: readonly ConstraintPart[], kernel: Kernel): number {
  return 1 + measureCost(kernel) * parts.filter((part) => part === 'toGo' || part === 'section').length;
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
function mostRacks({ later }: Sampler, kernel: Kernel): number {
  return Math.floor(DEAL_BUDGET / costOfRack(later, kernel));
}
