// Which racks a constraint allows, found by counting before drawing, and which of its parts exclude each other.
import type { CompiledCard } from '../card/index.ts';
import type { Kernel } from '../kernels/index.ts';
import { FACE_COUNT, faceIndex, JOKER_INDEX } from '../rules/index.ts';
import { type ConstraintPart, inRange, partsOf, rangeOf } from './constraint.ts';
import type { Constraint } from './format.ts';
import type { Shape } from './shapes.ts';

const FLOWER_INDEX = faceIndex('flower');
const HONORS = 7;

/** What a hand of the card can use of a rack, whichever its faces are; equal capacities are merged. */
interface Capacity {
  readonly section: number;
  /** How many tiles of each plain face the hand can use, largest first. */
  readonly plain: readonly number[];
  readonly flowers: number;
  readonly jokers: number;
}

/** Whether some rack of this shape may have these parts; false only where none can. */
export type Feasible = (shape: Shape, parts: readonly ConstraintPart[]) => boolean;

/** What is found out about a card once, however many constraints ask. */
interface CardReach {
  readonly capacities: readonly Capacity[];
  /** By jokers and flowers: tiles to go of these alone; every other tile can only lower it. */
  readonly farthest: Map<number, number>;
  /** By section, or -1 for the whole card: the fewest tiles to go that a rack of a shape can have. */
  readonly nearest: Map<number, WeakMap<Shape, number>>;
}

const reaches = new WeakMap<CompiledCard, CardReach>();

function reachOf(card: CompiledCard): CardReach {
  const known = reaches.get(card);
  if (known) return known;
  const reach = { capacities: capacitiesOf(card), farthest: new Map(), nearest: new Map() };
  reaches.set(card, reach);
  return reach;
}

export function feasibilityOf(constraint: Constraint, kernel: Kernel): Feasible {
  const { card } = kernel;
  const section = card.sections.findIndex(({ id }) => id === constraint.section);
  const farthestWith = ({ jokers, flowers }: Shape): number => {
    const { farthest } = reachOf(card);
    const key = jokers * 16 + flowers;
    const known = farthest.get(key) ?? kernel.toGo(bagWith(jokers, flowers));
    farthest.set(key, known);
    return known;
  };

  /** The fewest tiles to go that a rack of this shape can have, to any section or to the one asked for. */
  const nearestWith = (shape: Shape, toSection: boolean): number => {
    const { capacities, nearest } = reachOf(card);
    const key = toSection ? section : -1;
    const known = nearest.get(key) ?? new WeakMap<Shape, number>();
    nearest.set(key, known);
    const fewest = known.get(shape);
    if (fewest !== undefined) return fewest;
    const among = toSection ? capacities.filter((one) => one.section === section) : capacities;
    const found = among.reduce((least, one) => Math.min(least, 14 - mostMatched(shape, one)), 14);
    known.set(shape, found);
    return found;
  };

  return (shape, parts) =>
    parts.every((part) => {
      switch (part) {
        case 'inARow':
          return rowFits(shape, constraint, parts.includes('likeNumbers'));
        case 'likeNumbers':
          return likeFits(shape, constraint, parts.includes('inARow'));
        case 'toGo': {
          const { from, to } = rangeOf(constraint.toGo);
          return farthestWith(shape) >= from && nearestWith(shape, parts.includes('section')) <= to;
        }
        case 'section':
          return reachOf(card).capacities.some((capacity) => capacity.section === section);
        default:
          return inRange(shape[part], rangeOf(constraint[part]));
      }
    });
}

/** The smallest set of parts that no shape can have together; of several the first in the order of the constraint. */
export function conflictingParts(
  constraint: Constraint,
  shapes: readonly Shape[],
  possible: Feasible,
): readonly ConstraintPart[] {
  const parts = partsOf(constraint);
  for (let size = 1; size <= parts.length; size++) {
    for (const some of subsets(parts, size)) {
      if (!shapes.some((shape) => possible(shape, some))) return some;
    }
  }
  return parts;
}

function subsets(parts: readonly ConstraintPart[], size: number): ConstraintPart[][] {
  if (size === 0) return [[]];
  return parts.flatMap((part, index) =>
    subsets(parts.slice(index + 1), size - 1).map((others) => [part, ...others]),
  );
}

function different({ alike }: Shape): number {
  return alike[0] + alike[1] + alike[2] + alike[3];
}

/** A run needs as many different faces as it is long; where its length is limited, so is the number of faces. */
function rowFits(shape: Shape, constraint: Constraint, withLike: boolean): boolean {
  const { from, to } = rangeOf(constraint.inARow);
  // One of the like numbers may be part of the run, the others are further faces.
  const beside = withLike ? Math.max(0, suitsForLike(shape, rangeOf(constraint.likeNumbers).from) - 1) : 0;
  const aSuitHolds = 9 - Math.floor(9 / (to + 1));
  return from <= 9 && from + beside <= different(shape) && different(shape) <= HONORS + 3 * aSuitHolds;
}

function likeFits(shape: Shape, constraint: Constraint, withRow: boolean): boolean {
  const range = rangeOf(constraint.likeNumbers);
  // There is never one like number: it is none or at least two.
  if (range.from === 1 && range.to === 1) return false;
  if (range.from > 0 && suitsForLike(shape, range.from) > Math.min(3, different(shape))) return false;
  return range.from === 0 || !withRow || rangeOf(constraint.inARow).to > 0;
}

/** In how many suits a number must be held for that many tiles of it, 4 where three suits are too few. */
function suitsForLike({ alike }: Shape, tiles: number): number {
  if (tiles === 0) return 0;
  const held = [4, 3, 2, 1].flatMap((count) => new Array<number>(alike[count - 1]!).fill(count));
  const [first = 0, second = 0, third = 0] = held;
  if (first + second >= tiles) return 2;
  return first + second + third >= tiles ? 3 : 4;
}

/** The most tiles of a rack of this shape that a hand of this capacity can use. */
function mostMatched({ jokers, flowers, alike }: Shape, capacity: Capacity): number {
  const held = [4, 3, 2, 1].flatMap((count) => new Array<number>(alike[count - 1]!).fill(count));
  const plain = held.reduce((sum, count, place) => sum + Math.min(count, capacity.plain[place] ?? 0), 0);
  return Math.min(14, plain + Math.min(flowers, capacity.flowers) + Math.min(jokers, capacity.jokers));
}

function capacitiesOf(card: CompiledCard): readonly Capacity[] {
  const known = new Map<string, Capacity>();
  for (const { pattern, singles, groups } of card.hands) {
    const wanted = singles.map((count, face) => count + groups[face]!);
    const capacity: Capacity = {
      section: card.patterns[pattern]!.section,
      plain: wanted
        .slice(0, FLOWER_INDEX)
        .filter((count) => count > 0)
        .sort((a, b) => b - a),
      flowers: wanted[FLOWER_INDEX]!,
      jokers: groups.reduce((sum, count) => sum + count, 0),
    };
    const { section, plain, flowers, jokers } = capacity;
    known.set([section, flowers, jokers, ...plain].join(), capacity);
  }
  return [...known.values()];
}

function bagWith(jokers: number, flowers: number): readonly number[] {
  const bag = new Array<number>(FACE_COUNT).fill(0);
  bag[FLOWER_INDEX] = flowers;
  bag[JOKER_INDEX] = jokers;
  return bag;
}
