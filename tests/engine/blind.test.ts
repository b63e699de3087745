// The blind pass: which tiles are passed on, who saw them, and four blind passes at once.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, giverTo, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { resolveMove } from '../../shared-engine/rules/exchange/resolve.ts';
import type { ResolvedMove, SubmittedPass } from '../../shared-engine/rules/exchange/round.ts';
import { MOVE_STEPS, MOVES } from '../../shared-engine/rules/exchange/schedule.ts';
import { addTo, type Bag, bagOf, sizeOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { apply, opened, type Played, playOn, rejectionOf } from '../kit/rounds.ts';

const BLIND_STEPS = ['first-left', 'second-right'] as const;

/** Tiles told apart by seat: seat 0 passes bams, 1 craks, 2 dots, 3 winds and dragons. */
const OWN: readonly (readonly Face[])[] = [
  ['bam-1', 'bam-2', 'bam-3'],
  ['crak-1', 'crak-2', 'crak-3'],
  ['dot-1', 'dot-2', 'dot-3'],
  ['east', 'south', 'west'],
];

function passesWith(blind: readonly number[]) {
  return forFour(
    (seat): SubmittedPass => ({
      tiles: OWN[seat]!.slice(0, 3 - blind[seat]!),
      blind: blind[seat]!,
      by: 'player',
    }),
  );
}

function moveWith(
  blind: readonly number[],
  step: (typeof BLIND_STEPS)[number],
  seed: string,
  dealer: Seat = 0,
) {
  return resolveMove(step, passesWith(blind), dealer, stream(seed, 'blind'));
}

/** What each rack of the four has after the move, begun with exactly its own tiles. */
function racksAfter(move: ResolvedMove): readonly Bag[] {
  return SEATS.map((seat) =>
    addTo(takeFrom(bagOf(move.gave[seat]), move.gave[seat]) ?? [], move.received[seat]),
  );
}

const blindCounts = fc.tuple(fc.nat(3), fc.nat(3), fc.nat(3), fc.nat(3));
const anyBlindMove = fc.record({
  blind: blindCounts,
  step: fc.constantFrom(...BLIND_STEPS),
  seed: fc.string(),
  dealer: fc.constantFrom(...SEATS),
});

describe('any blind pass', () => {
  test('B1 B4 a blind pass keeps the size of every rack and loses no tile', () => {
    fc.assert(
      fc.property(anyBlindMove, ({ blind, step, seed, dealer }) => {
        const move = moveWith(blind, step, seed, dealer);
        for (const seat of SEATS) expect(move.received[seat]).toHaveLength(move.gave[seat].length);
        expect(sizesOf(move.received.flat())).toEqual(sizesOf(move.gave.flat()));
        expect(racksAfter(move).map(sizeOf)).toEqual(SEATS.map((seat) => move.gave[seat].length));
      }),
      { numRuns: 400 },
    );
  });

  test('B1 each tile that reaches a seat is either received or passed on blind', () => {
    fc.assert(
      fc.property(anyBlindMove, ({ blind, step, seed, dealer }) => {
        const move = moveWith(blind, step, seed, dealer);
        const toward = step === 'first-left' ? 'left' : 'right';
        for (const seat of SEATS) {
          const giver = giverTo(seat, toward);
          const arrived = [...move.gave[giver], ...move.forwarded[giver]];
          expect(sizesOf([...move.received[seat], ...move.forwarded[seat]])).toEqual(sizesOf(arrived));
          expect(move.forwarded[seat]).toHaveLength(blind[seat]! - move.voided);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('B4 slots are void only where all pass blind: as many as the tiles of all four fall short of three', () => {
    for (const blind of everyBlind()) {
      const tiles = blind.reduce((sum, count) => sum + 3 - count, 0);
      const expected = blind.every((count) => count > 0) ? Math.max(0, 3 - tiles) : 0;
      expect(moveWith(blind, 'first-left', `void ${blind}`).voided).toBe(expected);
    }
  });

  test('B4 four passes of three tiles blind move nothing', () => {
    const move = moveWith([3, 3, 3, 3], 'second-right', 'all');
    expect(move).toMatchObject({ voided: 3, received: [[], [], [], []], forwarded: [[], [], [], []] });
  });

  test('B4 a single tile goes round all four seats and returns to its own', () => {
    const move = moveWith([3, 3, 3, 2], 'first-left', 'one');
    expect(move.received).toEqual([[], [], [], ['east']]);
    expect(move.forwarded).toEqual([['east'], ['east'], ['east'], []]);
  });

  test('B2 each arriving tile is passed on equally often, and the same seed passes on the same tiles', () => {
    const counts = new Map<Face, number>();
    const runs = 6000;
    for (let n = 0; n < runs; n++) {
      // Seat 0 passes left to seat 3, which passes one of the three on.
      const face = moveWith([0, 0, 0, 1], 'first-left', `fair ${n}`).forwarded[3][0]!;
      counts.set(face, (counts.get(face) ?? 0) + 1);
    }
    expect([...counts.keys()].sort()).toEqual(['bam-1', 'bam-2', 'bam-3']);
    const chiSquare = [...counts.values()].reduce(
      (sum, count) => sum + (count - runs / 3) ** 2 / (runs / 3),
      0,
    );
    // Critical value for df 2 at .001: 13.816 (printed chi-square tables, from memory).
    expect(chiSquare).toBeLessThan(13.816);
    expect(moveWith([1, 2, 1, 3], 'first-left', 'same')).toEqual(
      moveWith([1, 2, 1, 3], 'first-left', 'same'),
    );
  });
});

describe('a blind pass in a round', () => {
  const random = () => stream('blind rounds', 'players');
  const at = (step: string): Played =>
    playOn(opened('blind'), random(), (round) => round.phase === 'passing' && round.step === step);

  test('B1 only first left and second right may be blind', () => {
    const blind = MOVE_STEPS.filter((step) => MOVES[step].blind);
    expect(blind).toEqual(BLIND_STEPS);
  });

  test('B1 a blind pass is rejected at first right', () => {
    const { round } = opened('blind');
    const tiles = seatView(round, 0)
      .rack.filter((face) => face !== 'joker')
      .slice(0, 2);
    const rejection = rejectionOf(round, {
      kind: 'pass',
      step: 'first-right',
      tiles,
      blind: 1,
      seat: 0,
      by: 'player',
    });
    expect(rejection.code).toBe('blind-not-allowed');
  });

  test.each([-1, 4, 0.5])('B1 passing %d tiles blind is rejected', (blind) => {
    const { round } = at('first-left');
    const rejection = rejectionOf(round, {
      kind: 'pass',
      step: 'first-left',
      tiles: [],
      blind,
      seat: 0,
      by: 'player',
    });
    expect(rejection.code).toBe('wrong-count');
  });

  test('B2 B3 the tiles passed on blind are in the log, and not in the view of the seat that passed them on', () => {
    let now = at('first-left');
    const others = (seat: Seat): readonly Face[] =>
      seatView(now.round, seat)
        .rack.filter((face) => face !== 'joker')
        .slice(0, 3);
    now = apply(now, { kind: 'pass', step: 'first-left', tiles: [], blind: 3, seat: 2, by: 'player' });
    for (const seat of [0, 1, 3] as const) {
      now = apply(now, {
        kind: 'pass',
        step: 'first-left',
        tiles: others(seat),
        blind: 0,
        seat,
        by: 'player',
      });
    }
    const resolved = now.round.resolved.at(-1);
    expect(resolved).toMatchObject({ kind: 'move', step: 'first-left', blind: [0, 0, 3, 0] });
    expect(resolved?.kind === 'move' && resolved.forwarded[2]).toHaveLength(3);
    const seen = seatView(now.round, 2).record.steps.at(-1);
    expect(seen).toEqual({
      kind: 'move',
      step: 'first-left',
      blind: [0, 0, 3, 0],
      voided: 0,
      by: ['player', 'player', 'player', 'player'],
      to: 1,
      from: 3,
      gave: [],
      received: [],
    });
  });
});

function everyBlind(): number[][] {
  const counts = [0, 1, 2, 3];
  return counts.flatMap((a) => counts.flatMap((b) => counts.flatMap((c) => counts.map((d) => [a, b, c, d]))));
}

function sizesOf(faces: readonly Face[]): Bag {
  return bagOf(faces);
}
