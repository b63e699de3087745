// Drills for tests, and racks of a set small enough to write every one of them down.
import type { PreparedDrill } from '../../server/work-ports.ts';
import { beginDrill, continueDrill } from '../../server/workers/prepare-drill.ts';
import type { Constraint, Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { type Sampler, samplerFor } from '../../shared-engine/drill/sampler.ts';
import type { Stock } from '../../shared-engine/drill/shapes.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { bagOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seedNamed } from './rounds.ts';

export function drillOf(deals: readonly DrillDeal[]): Drill {
  return {
    format: 'quadrille-drill/1',
    title: 'Pairs before runs',
    form: 'alone',
    bots: { styles: ['typical', 'strong', 'casual'], seed: seedNamed('bots of the drill') },
    deals,
  };
}

export function dealOf(tiles: DrillDeal['tiles'], extra: Partial<DrillDeal> = {}): DrillDeal {
  return { id: 'first', seat: 0, dealer: 1, tiles, ...extra };
}

export function sampledDeal(constraint: Constraint, name = 'wish'): DrillDeal {
  return dealOf({ kind: 'sampled', constraint, seed: seedNamed(name) });
}

/** All parts of a drill, one after the other. */
export function preparedDrill(json: unknown, kernel: Kernel): PreparedDrill {
  const goesOn = () => false;
  let step = beginDrill(json, kernel, goesOn);
  while (!step.isDone) step = continueDrill(step.part, kernel, goesOn);
  return step.prepared;
}

/** One rack of some hundred thousand has it, whatever the card: finding one takes a good part of a second. */
export const HARD_CONSTRAINT: Constraint = { jokers: 0, inARow: 8, kongs: 1 };

/** 36 tiles: eight faces of four, two flowers, two jokers. */
export const SMALL_STOCK: Stock = { plain: [0, 1, 2, 3, 9, 10, 18, 27], flowers: 2, jokers: 2 };

const SMALL_FACES: readonly Face[] = [
  'bam-1',
  'bam-2',
  'bam-3',
  'bam-4',
  'crak-1',
  'crak-2',
  'dot-1',
  'east',
];

/** Every tile of the small set by name; tiles of one face are different tiles here. */
const SMALL_TILES: readonly Face[] = [
  ...SMALL_FACES.flatMap((face): Face[] => [face, face, face, face]),
  'flower',
  'flower',
  'joker',
  'joker',
];

/** Each rack of `size` tiles of the small set with the number of tile sets that look like it; one by one. */
export function everySmallRack(size: number): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const extend = (rack: readonly Face[], from: number): void => {
    if (rack.length === size) {
      const key = rack.join(' ');
      found.set(key, (found.get(key) ?? 0) + 1);
      return;
    }
    for (let tile = from; tile < SMALL_TILES.length; tile++) extend([...rack, SMALL_TILES[tile]!], tile + 1);
  };
  extend([], 0);
  return found;
}

/** A constraint by its definition, written apart from the engine; the card's parts are asked of the kernel. */
export function fitsByDefinition(rack: readonly Face[], constraint: Constraint, kernel: Kernel): boolean {
  const count = (face: Face): number => rack.filter((other) => other === face).length;
  const faces = [...new Set(rack)].filter((face) => face !== 'joker');
  const held = (at: number): number => faces.filter((face) => count(face) >= at).length;
  const has = (suit: string, number: number): boolean => rack.some((face) => face === `${suit}-${number}`);
  const suits = ['bam', 'crak', 'dot'];
  const rowFrom = (suit: string, number: number): number =>
    has(suit, number) ? 1 + rowFrom(suit, number + 1) : 0;
  const numbers = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const alike = numbers.map((number) => {
    const tiles = rack.filter((face) => suits.some((suit) => face === `${suit}-${number}`));
    return new Set(tiles).size > 1 ? tiles.length : 0;
  });
  const values: Record<Exclude<keyof Constraint, 'section'>, () => number> = {
    jokers: () => count('joker'),
    flowers: () => count('flower'),
    pairs: () => held(2),
    pungs: () => held(3),
    kongs: () => held(4),
    inARow: () => Math.max(...suits.flatMap((suit) => numbers.map((number) => rowFrom(suit, number)))),
    likeNumbers: () => Math.max(...alike),
    toGo: () => kernel.toGo(bagOf(rack)),
  };
  const amountsFit = (Object.keys(values) as (keyof typeof values)[]).every((name) => {
    const amount = constraint[name];
    if (amount === undefined) return true;
    const value = values[name]();
    if (typeof amount === 'number') return value === amount;
    return value >= ('from' in amount ? amount.from : 0) && value <= (amount.to ?? 14);
  });
  return amountsFit && (constraint.section === undefined || isNearest(rack, constraint.section, kernel));
}

function isNearest(rack: readonly Face[], section: string, kernel: Kernel): boolean {
  const byLine = kernel.toGoByPattern(bagOf(rack));
  const place = kernel.card.sections.findIndex(({ id }) => id === section);
  const ofSection = [...byLine].filter((_, line) => kernel.card.patterns[line]!.section === place);
  return Math.min(...ofSection) === Math.min(...byLine);
}

/** Draws until `count` racks fit; how often each came up. */
export function drawnRacks(draw: () => readonly Face[] | null, count: number): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (let n = 0; n < count; ) {
    const rack = draw();
    if (rack === null) continue;
    const key = rack.join(' ');
    counts.set(key, (counts.get(key) ?? 0) + 1);
    n++;
  }
  return counts;
}

/** The sampler on the small set as a drawer for `drawnRacks`. */
export function smallDrawer(constraint: Constraint, size: number, kernel: Kernel, seed: string) {
  const sampler = feasible(samplerFor(constraint, size, kernel, SMALL_STOCK));
  const random = stream(seed, 'small racks');
  return (): readonly Face[] | null => {
    const rack = sampler.draw(random);
    return sampler.misses(rack) === null ? facesOf(rack) : null;
  };
}

export function feasible(sampler: ReturnType<typeof samplerFor>): Sampler {
  if (!sampler.ok) throw new Error(`impossible: ${sampler.parts.join()}`);
  return sampler;
}

export interface Evenness {
  /** Different racks that fit, and those drawn that do not. */
  readonly racks: number;
  readonly strangers: number;
  readonly df: number;
  /** Chi-square on the scale of the normal distribution (Wilson & Hilferty 1931). */
  readonly z: number;
}

/** How the racks drawn sit with the share each is due; racks due fewer than 8 times are taken together. */
export function evenness(due: ReadonlyMap<string, number>, drawn: ReadonlyMap<string, number>): Evenness {
  const total = sum([...due.values()]);
  const draws = sum([...drawn.values()]);
  let rareDue = 0;
  let rareDrawn = 0;
  let chi = 0;
  let cells = 0;
  const add = (expected: number, observed: number): void => {
    chi += (observed - expected) ** 2 / expected;
    cells++;
  };
  for (const [rack, ways] of due) {
    const expected = (draws * ways) / total;
    const observed = drawn.get(rack) ?? 0;
    if (expected >= 8) add(expected, observed);
    else {
      rareDue += expected;
      rareDrawn += observed;
    }
  }
  if (rareDue > 0) add(rareDue, rareDrawn);
  const df = cells - 1;
  const spread = 2 / (9 * df);
  return {
    racks: due.size,
    strangers: [...drawn.keys()].filter((rack) => !due.has(rack)).length,
    df,
    z: (Math.cbrt(chi / df) - (1 - spread)) / Math.sqrt(spread),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
