// What is said of a wish: how rare its racks are, why there can be none, why none was found and what to change.

import { listed } from '../analysis/review/words/phrases.ts';
import type { Kernel } from '../kernels/tiles-to-go/kernel.ts';
import { partInWords, partsOf, type WishPart } from './constraint.ts';
import type { Wish } from './format.ts';
import type { Rarity } from './rarity.ts';

const MULTIPLES: readonly WishPart[] = ['pairs', 'pungs', 'kongs'];

export function wishInWords(wish: Wish, kernel: Kernel): string {
  const parts = partsOf(wish);
  return parts.length === 0 ? 'anything' : listed(parts.map((part) => inWords(wish, part, kernel)));
}

export function impossibleWords(
  wish: Wish,
  parts: readonly WishPart[],
  size: number,
  kernel: Kernel,
): string {
  const said = listed(parts.map((part) => inWords(wish, part, kernel)));
  if (parts.length === 1) return `no rack of ${size} tiles can have ${said}; wish for something else there.`;
  const nested = parts.filter((part) => MULTIPLES.includes(part)).length > 1;
  const why = nested ? ' A kong is also a pung, and a pung also a pair.' : '';
  return `no rack of ${size} tiles can have these together: ${said}; change one of them.${why}`;
}

export interface Search {
  readonly size: number;
  readonly kernel: Kernel;
  readonly tried: number;
  /** The share of racks that fit is below this, as far as the search can tell. */
  readonly high: number;
  /** The part that was missed most, and of how many racks that came to it how many had it. */
  readonly part: WishPart;
  readonly had: number;
  readonly of: number;
}

export function tooRareWords(wish: Wish, { size, kernel, tried, high, part, had, of }: Search): string {
  const loosen = inWords(wish, part, kernel);
  return `such racks are too rare to find: of ${grouped(tried)} racks drawn none had it all, so fewer than 1 of ${oneIn(high)} racks of ${size} tiles fits. Loosen "${loosen}" first; ${had === 0 ? 'none' : `only ${had}`} of the ${grouped(of)} racks looked at for it had that.`;
}

/** "about 1 rack of 340 fits (between 1 of 372 and 1 of 310)"; without the bracket where the share is exact. */
export function rarityInWords({ share, low, high, drawn }: Rarity): string {
  if (share === 0) return `fewer than 1 rack of ${oneIn(high)} fits`;
  if (share >= COMMON) {
    const said = `${percent(share)} % of racks fit`;
    return drawn === 0 ? said : `about ${said} (between ${percent(low)} % and ${percent(high)} %)`;
  }
  const said = `1 rack of ${oneIn(share)} fits`;
  return drawn === 0 ? said : `about ${said} (between 1 of ${oneIn(low)} and 1 of ${oneIn(high)})`;
}

/** From this share on a percentage says more than "1 of". */
const COMMON = 0.1;

function percent(share: number): string {
  return String(Math.round(share * 100));
}

/** Of how many racks one fits: three digits and then noughts, with commas. */
function oneIn(share: number): string {
  let unit = 1;
  while (1 / share / unit >= 1000) unit *= 10;
  return grouped(Math.round(1 / share / unit) * unit);
}

function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}

function inWords(wish: Wish, part: WishPart, { card }: Kernel): string {
  return partInWords(wish, part, new Map(card.families.map(({ id, name }) => [id, name])));
}
