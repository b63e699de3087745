// Tiles to go against the optimum of an integer program that knows only tiles, slots and which may stand where.
// Source of the optimum: HiGHS (https://highs.dev), a general-purpose solver, through the npm package "highs".
// Which slots a joker may take (groups of three or more) is common practice, no source.
import { createRequire } from 'node:module';
import type { LegacyHighs } from 'highs';
import { expect, test } from 'vitest';
import { compileCard } from '../../shared-engine/card/compile.ts';
import type { Hand } from '../../shared-engine/card/compiled.ts';
import type { CardFile } from '../../shared-engine/card/format.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import {
  addTo,
  type Bag,
  bagOf,
  FULL_SET,
  facesOf,
  sizeOf,
  takeFrom,
} from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face, JOKER_INDEX } from '../../shared-engine/rules/tiles/face.ts';
import { seedNamed } from '../kit/rounds.ts';

interface Problem {
  readonly rack: Bag;
  readonly target: Hand;
}

// The types of the package describe its CommonJS build, so that is the one loaded.
const loadHighs: () => Promise<LegacyHighs> = createRequire(import.meta.url)('highs');
const highs = await loadHighs();
const PROBLEMS_A_MODEL = 50;

/** Tiles that can be placed at most, for each problem; fifty independent problems share one model. */
function mostPlaced(problems: readonly Problem[]): number[] {
  const results: number[] = [];
  for (let start = 0; start < problems.length; start += PROBLEMS_A_MODEL) {
    results.push(...solved(problems.slice(start, start + PROBLEMS_A_MODEL)));
  }
  return results;
}

/** One 0–1 variable for each tile and each slot it may take; a tile takes one slot, a slot one tile. */
function solved(problems: readonly Problem[]): number[] {
  const variables: string[][] = [];
  const rows: string[] = [];
  problems.forEach(({ rack, target }, problem) => {
    const tiles = facesOf(rack);
    const slots = [
      ...facesOf(target.singles).map((face) => ({ face, jokers: false })),
      ...facesOf(target.groups).map((face) => ({ face, jokers: true })),
    ];
    const pairs = tiles.flatMap((tile, t) =>
      slots.flatMap(({ face, jokers }, s) =>
        tile === face || (tile === 'joker' && jokers) ? [{ t, s, name: `x${problem}_${t}_${s}` }] : [],
      ),
    );
    variables.push(pairs.map(({ name }) => name));
    const atMostOne = (chosen: typeof pairs) => {
      if (chosen.length > 1) rows.push(`${chosen.map(({ name }) => name).join(' + ')} <= 1`);
    };
    for (const t of tiles.keys()) atMostOne(pairs.filter((pair) => pair.t === t));
    for (const s of slots.keys()) atMostOne(pairs.filter((pair) => pair.s === s));
  });
  const all = variables.flat();
  const model = `Maximize\n obj: ${all.join('\n + ')}\nSubject To\n ${rows.join('\n ')}\nBinary\n ${all.join('\n ')}\nEnd`;
  const solution = highs.solve(model, { output_flag: false });
  if (solution.Status !== 'Optimal') throw new Error(`The solver ended with ${solution.Status}.`);
  return variables.map((names) =>
    names.reduce((sum, name) => sum + Math.round(solution.Columns[name]?.Primal ?? 0), 0),
  );
}

/** Whether some jokers or naturals are left without a slot because only singles and pairs are open. */
function bound({ rack, target }: Problem): boolean {
  const fitting = FACES.reduce(
    (sum, _, face) => sum + Math.min(rack[face]!, target.singles[face]! + target.groups[face]!),
    rack[JOKER_INDEX]!,
  );
  return 14 - tilesToGo(target, rack) < fitting;
}

function agree(problems: readonly Problem[]): void {
  const ours = problems.map(({ rack, target }) => tilesToGo(target, rack));
  expect(ours).toEqual(mostPlaced(problems).map((placed) => 14 - placed));
}

/** The racks of `deals` dealt rounds: one of 14 and three of 13 tiles each. */
function dealtRacks(deals: number): Bag[] {
  return Array.from({ length: deals }, (_, deal) => [
    ...dealTiles({ seed: seedNamed(`tiles-to-go-${deal}`), dealer: 0 }).racks,
  ]).flat();
}

/** The same rack after the tiles farthest from a hand have been changed for others of the set, jokers among them. */
function improved(rack: Bag, target: Hand, seed: string): Bag {
  const random = stream(seed, 'improved');
  const wanted = FACES.map((_, face) => target.singles[face]! + target.groups[face]!);
  const idle = facesOf(rack.map((count, face) => Math.max(0, count - wanted[face]!))).slice(0, 6);
  const kept = takeFrom(rack, idle)!;
  const pool = facesOf(
    FULL_SET.map((count, face) => (wanted[face]! > 0 || face === JOKER_INDEX ? count - kept[face]! : 0)),
  );
  return addTo(kept, drawn(pool, idle.length, random));
}

test('tiles to go of 2,000 dealt racks is the optimum of the integer program', () => {
  const { hands } = houseCard();
  const random = stream('tiles-to-go', 'targets');
  const racks = dealtRacks(500);
  expect(racks).toHaveLength(2_000);
  // Each rack twice: as dealt, and moved close to its hand, where pairs, groups and jokers compete.
  const problems = racks.flatMap((rack, index): Problem[] => {
    const target = hands[random.below(hands.length)]!;
    return [
      { rack, target },
      { rack: improved(rack, target, `rack-${index}`), target },
    ];
  });
  expect(problems.filter(({ rack }) => rack[JOKER_INDEX]! > 0).length).toBeGreaterThan(2_000);
  expect(problems.filter(bound).length).toBeGreaterThan(20);
  expect(new Set(problems.map(({ rack, target }) => tilesToGo(target, rack))).size).toBeGreaterThan(9);
  agree(problems);
});

/** A card where one face stands in a pair and in a group, which no pattern of the house card does. */
const ODD_CARD: CardFile = {
  format: 'quadrille-card/1',
  id: 'odd',
  name: 'Odd card',
  parameters: {},
  sections: [{ id: 'mixed', name: 'Pair and group of one face' }],
  patterns: [
    {
      id: 'pair-and-pung',
      section: 'mixed',
      points: 1,
      concealed: false,
      groups: [
        { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
        { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
        { size: 4, tile: { dragon: { matching: 'p' } } },
        { size: 1, tile: { dragon: { matching: 'p' } } },
        { size: 4, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
      ],
    },
    {
      id: 'mostly-pairs',
      section: 'mixed',
      points: 1,
      concealed: true,
      groups: [
        { size: 3, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
        { size: 2, tile: { number: { var: 'n' }, suit: { var: 'p' } } },
        { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'p' } } },
        { size: 2, tile: { number: { var: 'n', plus: 1 }, suit: { var: 'q' } } },
        { size: 2, tile: { dragon: { matching: 'p' } } },
        { size: 2, tile: { flower: true } },
        { size: 1, tile: { zero: true } },
      ],
    },
    {
      id: 'flowers-and-winds',
      section: 'mixed',
      points: 1,
      concealed: true,
      groups: [
        { size: 2, tile: { flower: true } },
        { size: 6, tile: { flower: true } },
        { size: 1, tile: { wind: { var: 'w' } } },
        { size: 5, tile: { wind: { var: 'w' } } },
      ],
    },
  ],
};

test('tiles to go is the optimum too where one face stands in a pair and in a group', () => {
  const { hands } = compileCard(ODD_CARD);
  const random = stream('tiles-to-go', 'odd');
  const problems = Array.from({ length: 400 }, (): Problem => {
    const target = hands[random.below(hands.length)]!;
    const near = facesOf(
      FULL_SET.map((count, face) => (target.singles[face]! + target.groups[face]! > 0 ? count : 0)),
    );
    const jokers = bagOf(drawn([...new Array<'joker'>(8).fill('joker')], random.below(6), random));
    const natural = drawn(near, 13 - sizeOf(jokers), random);
    return { rack: addTo(jokers, natural), target };
  });
  expect(problems.filter(bound).length).toBeGreaterThan(20);
  agree(problems);
});

test('with eight jokers and six flowers the single wind is still missing: no joker stands alone', () => {
  const target = compileCard(ODD_CARD).hands.find(({ pattern }) => pattern === 2)!;
  const rack = bagOf([...new Array<Face>(6).fill('flower'), ...new Array<Face>(8).fill('joker')]);
  expect(mostPlaced([{ rack, target }])).toEqual([13]);
  expect(tilesToGo(target, rack)).toBe(1);
});
