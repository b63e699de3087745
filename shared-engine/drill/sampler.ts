// Draws racks that fit a constraint, all equally likely: a shape by exact counts, faces at random, the rest by trying.
import { type Kernel, toGoBySection } from '../kernels/index.ts';
import { type Bag, FACE_COUNT, faceIndex, JOKER_INDEX, type Random } from '../rules/index.ts';
import { type ConstraintPart, inARow, inRange, likeNumbers, partsOf, rangeOf } from './constraint.ts';
import { conflictingParts, feasibilityOf } from './feasibility.ts';
import type { Constraint } from './format.ts';
import { binomial, type Shape, type Stock, shapesOf, WHOLE_SET } from './shapes.ts';
import { weightedDraw } from './weighted.ts';

const FLOWER_INDEX = faceIndex('flower');

/** Parts that a shape alone does not decide, in the order in which they are checked: cheap ones first. */
const LATER = ['inARow', 'likeNumbers', 'toGo', 'section'] as const;
type LaterPart = (typeof LATER)[number];

export interface Sampler {
  readonly ok: true;
  /** The share of all racks whose shape the constraint allows; exact but for one rounded division. */
  readonly share: number;
  /** The parts that a drawn rack may still miss; empty where every rack drawn fits. */
  readonly later: readonly LaterPart[];
  /** One rack of a possible shape, each as likely as the next. */
  draw(random: Random): Bag;
  /** The first of `later` that this rack misses, or null where the rack fits. */
  misses(rack: Bag): LaterPart | null;
}

/** The parts of a constraint that no rack can have together. */
export interface Impossible {
  readonly ok: false;
  readonly parts: readonly ConstraintPart[];
}

/**
 * Every rack that fits is equally likely, a rack being a set of physical tiles. Why: tiles of one face look
 * alike, so a shape stands for `ways` sets of tiles, and every rack of one shape for equally many of them
 * (4, 6, 4 or 1 for each plain face by how often it is held, C(8, n) for flowers and jokers). Drawing the shape
 * with weight `ways` and then the faces of the shape by an even shuffle therefore draws evenly from all sets of
 * tiles whose shape is possible. A shape is left out only where no rack of it fits, so all that fit are still
 * there, and keeping a draw exactly when it fits leaves them as even as they were.
 */
export function samplerFor(
  constraint: Constraint,
  size: number,
  kernel: Kernel,
  stock: Stock = WHOLE_SET,
): Sampler | Impossible {
  const possible = feasibilityOf(constraint, kernel);
  const parts = partsOf(constraint);
  const shapes = shapesOf(size, stock);
  const fitting = shapes.filter((shape) => shape.ways > 0n && possible(shape, parts));
  if (fitting.length === 0) return { ok: false, parts: conflictingParts(constraint, shapes, possible) };

  const shape = weightedDraw(fitting.map(({ ways }) => ways));
  const all = binomial(stock.plain.length * 4 + stock.flowers + stock.jokers, size);
  const later = LATER.filter((part) => constraint[part] !== undefined);
  const section = kernel.card.sections.findIndex(({ id }) => id === constraint.section);
  return {
    ok: true,
    share: Number(shape.sum) / Number(all),
    later,
    draw: (random) => rackOf(fitting[shape.draw(random)]!, stock.plain, random),
    misses: (rack) => later.find((part) => !has(rack, part)) ?? null,
  };

  function has(rack: Bag, part: LaterPart): boolean {
    switch (part) {
      case 'inARow':
        return inRange(inARow(rack), rangeOf(constraint.inARow));
      case 'likeNumbers':
        return inRange(likeNumbers(rack), rangeOf(constraint.likeNumbers));
      case 'toGo':
        return inRange(kernel.toGo(rack), rangeOf(constraint.toGo));
      case 'section': {
        const bySection = toGoBySection(kernel, rack);
        return bySection[section] === Math.min(...bySection);
      }
    }
  }
}

/** A rack of the shape: the faces held four times are drawn first, then three times, and so on. */
function rackOf({ jokers, flowers, alike }: Shape, plain: readonly number[], random: Random): Bag {
  const rack = new Array<number>(FACE_COUNT).fill(0);
  rack[FLOWER_INDEX] = flowers;
  rack[JOKER_INDEX] = jokers;
  const faces = [...plain];
  let left = faces.length;
  for (let count = 4; count >= 1; count--) {
    for (let n = 0; n < alike[count - 1]!; n++) {
      const place = random.below(left);
      rack[faces[place]!] = count;
      faces[place] = faces[--left]!;
    }
  }
  return rack;
}
