// Sentences about a constraint: how rare its racks are, why none can exist or none was found, and what to change.
import { listed } from '../analysis/index.ts';
import type { Kernel } from '../kernels/index.ts';
import { type ConstraintPart, partsOf, partText, rangeOf } from './constraint.ts';
import type { Constraint } from './format.ts';
import type { Rarity } from './rarity.ts';

const MULTIPLES: readonly ConstraintPart[] = ['pairs', 'pungs', 'kongs'];

export function constraintText(constraint: Constraint, kernel: Kernel): string {
  const parts = partsOf(constraint);
  return parts.length === 0 ? 'anything' : listed(parts.map((part) => textOf(constraint, part, kernel)));
}

export function impossibleMessage(
  constraint: Constraint,
  parts: readonly ConstraintPart[],
  size: number,
  kernel: Kernel,
): string {
  const said = listed(parts.map((part) => textOf(constraint, part, kernel)));
  if (parts.length === 1) {
    if (parts[0] === 'toGo' && rangeOf(constraint.toGo).to === 0) {
      return `no rack of ${size} tiles starts with 0 tiles to go; choose 1 or more.`;
    }
    return `no rack of ${size} tiles can have ${said}; choose something else.`;
  }
  const nested = parts.filter((part) => MULTIPLES.includes(part)).length > 1;
  const why = nested ? ' A kong is also a pung, and a pung also a pair.' : '';
  return `no rack of ${size} tiles can have these together: ${said}; change one of them.${why}`;
}

export interface FailedSearch {
  readonly size: number;
  readonly kernel: Kernel;
  readonly tried: number;
  /** The share of racks that fit is below this, as far as the search can tell. */
  readonly high: number;
  /** The part that the fewest racks had: `had` of the `of` racks that were checked for it. */
  readonly part: ConstraintPart;
  readonly had: number;
  readonly of: number;
}

export function tooRareMessage(
  constraint: Constraint,
  { size, kernel, tried, high, part, had, of }: FailedSearch,
): string {
  const loosen = textOf(constraint, part, kernel);
  return [
    `such racks are too rare to find: none of the ${grouped(tried)} racks drawn fits, so fewer than 1 of ${oneIn(high)} racks of ${size} tiles does.`,
    `Loosen "${loosen}" first: ${had === 0 ? 'none' : `only ${had}`} of ${grouped(of)} racks had that.`,
  ].join(' ');
}

export function usedUpMessage(constraint: Constraint, part: ConstraintPart, kernel: Kernel): string {
  const loosen = textOf(constraint, part, kernel);
  return `the search for a rack ended here, because this drill has used up what drawing its racks may take. Loosen "${loosen}" here or the rarest racks of the deals before, or make two drills of it.`;
}

/** "about 1 rack of 340 fits (between 1 of 372 and 1 of 310)"; without the parentheses where the share is exact. */
export function rarityText({ share, low, high, drawn }: Rarity): string {
  if (share === 0) return `fewer than 1 rack of ${oneIn(high)} fits`;
  if (share >= PERCENT_FROM) {
    const said = `${percent(share)}% of racks fit`;
    return drawn === 0 ? said : `about ${said} (between ${percent(low)}% and ${percent(high)}%)`;
  }
  const said = `1 rack of ${oneIn(share)} fits`;
  return drawn === 0 ? said : `about ${said} (between 1 of ${oneIn(low)} and 1 of ${oneIn(high)})`;
}

/** From this share on a percentage says more than "1 of". */
const PERCENT_FROM = 0.1;

function percent(share: number): string {
  return String(Math.round(share * 100));
}

/** Of how many racks one fits: rounded to three digits, with commas. */
function oneIn(share: number): string {
  let unit = 1;
  while (1 / share / unit >= 1000) unit *= 10;
  return grouped(Math.round(1 / share / unit) * unit);
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}

function textOf(constraint: Constraint, part: ConstraintPart, { card }: Kernel): string {
  return partText(constraint, part, new Map(card.sections.map(({ id, name }) => [id, name])));
}
