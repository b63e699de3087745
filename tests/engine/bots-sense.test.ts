// Bots choose sensibly: what they pass, how many blind, whether they continue, how many they ask for, what they risk.
import { describe, expect, it } from 'vitest';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import { nearness } from '../../shared-engine/kernels/tiles-to-go/nearness.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { type RiskGrade, riskGrade } from '../../shared-engine/policy/pass-risk.ts';
import type { StyleName } from '../../shared-engine/policy/styles.ts';
import { drawn, stream } from '../../shared-engine/rules/deal/random.ts';
import { withSeat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import {
  type Bag,
  bagOf,
  countOf,
  FULL_SET,
  facesOf,
  takeFrom,
} from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { randomCard } from '../kit/random-card.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

const kernel = createSwarKernel(randomCard('sense', 90, 6));
const random = stream('sense', 'racks');
/** Finished hands that the set can make without a joker. */
const hands = kernel.card.hands
  .map(({ singles, groups }) => singles.map((count, face) => count + groups[face]!))
  .filter((hand) => hand.every((count, face) => count <= FULL_SET[face]!));

function chosen(style: StyleName, round: Round): AnswerChoice | null {
  return chooseFor(style, seatView(round, 1), kernel, stream('sense', style));
}

/** The round with these tiles on seat 1, which owes an answer. */
function holding(round: Round, tiles: readonly Face[]): Round {
  return { ...round, racks: withSeat(round.racks, 1, bagOf(tiles)) };
}

const start = opened('sense').round;
const blindStep = playOn(
  opened('sense'),
  random,
  (round) => round.phase === 'passing' && round.step === 'first-left',
).round;
const voting = playOn(opened('sense'), random, (round) => round.phase === 'voting').round;
const asking = playOn(opened('sense'), random, (round) => round.phase === 'asking').round;

/** What is left of a rack when a pass has gone. */
function restOf(rack: Bag, choice: AnswerChoice | null): Bag {
  if (choice?.kind !== 'pass') throw new Error('not a pass');
  return takeFrom(rack, choice.tiles) ?? [];
}

function otherTiles(hand: Bag, count: number): Face[] {
  const others = facesOf(FULL_SET).filter((face) => countOf(hand, face) === 0 && face !== 'joker');
  return drawn(others, count, random);
}

/** Nearness after the best of all triples. */
function bestOfAll(rack: Bag): number {
  const faces = [...new Set(facesOf(rack))].filter((face) => face !== 'joker');
  let best = Number.NEGATIVE_INFINITY;
  for (const [i, a] of faces.entries()) {
    for (const [j, b] of faces.slice(i).entries()) {
      for (const c of faces.slice(i + j)) {
        const rest = takeFrom(rack, [a, b, c]);
        if (rest) best = Math.max(best, nearness(kernel, rest));
      }
    }
  }
  return best;
}

describe('what a strong bot passes', () => {
  it('costs on average less than a tenth of a tile more than the best of all triples', () => {
    const losses = Array.from({ length: 150 }, () => {
      const rack = bagOf(drawn(facesOf(FULL_SET), 13, random));
      return (
        bestOfAll(rack) - nearness(kernel, restOf(rack, chosen('strong', holding(start, facesOf(rack)))))
      );
    });
    expect(Math.min(...losses)).toBeGreaterThanOrEqual(-1e-12);
    expect(losses.reduce((sum, loss) => sum + loss, 0) / losses.length).toBeLessThan(0.1);
  });

  it('leaves a rack three tiles away from a hand as near as it was, whatever three other tiles came to it', () => {
    expect(hands.length).toBeGreaterThan(20);
    for (const hand of hands) {
      const natural = facesOf(hand);
      const rack = bagOf([...drawn(natural, 11, random), ...otherTiles(hand, 3)]);
      expect(kernel.toGo(restOf(rack, chosen('strong', holding(start, facesOf(rack)))))).toBeLessThanOrEqual(
        3,
      );
    }
  });

  it('C2 is never a joker', () => {
    const rack = bagOf([
      ...new Array<Face>(4).fill('joker'),
      ...facesOf(hands[0]!).slice(0, 6),
      ...otherTiles(hands[0]!, 3),
    ]);
    expect(countOf(restOf(rack, chosen('strong', holding(start, facesOf(rack)))), 'joker')).toBe(4);
  });
});

describe('the numbers of a strong bot', () => {
  const nearly = hands.map((hand) => drawn(facesOf(hand), 13, random));
  const scattered = Array.from({ length: 300 }, () => drawn(facesOf(FULL_SET), 13, random)).sort(
    (a, b) => nearness(kernel, bagOf(a)) - nearness(kernel, bagOf(b)),
  )[0]!;

  it('B1 are three blind for a rack one tile away and none for a scattered one', () => {
    for (const tiles of nearly) {
      expect(chosen('strong', holding(blindStep, tiles))).toMatchObject({ tiles: [], blind: 3 });
    }
    expect(chosen('strong', holding(blindStep, scattered))).toMatchObject({ blind: 0 });
  });

  it('B1 are one own tile and two blind for a rack with one passer', () => {
    for (const hand of hands) {
      const [other] = otherTiles(hand, 1);
      const rack = [...drawn(facesOf(hand), 12, random), other!];
      expect(chosen('strong', holding(blindStep, rack))).toMatchObject({ tiles: [other], blind: 2 });
    }
  });

  it('O1 are stop for a rack one tile away and continue for a scattered one', () => {
    for (const tiles of nearly) expect(chosen('strong', holding(voting, tiles))).toMatchObject({ go: false });
    expect(chosen('strong', holding(voting, scattered))).toMatchObject({ go: true });
  });

  it('Y1 are as many asked for as the rack has passers', () => {
    for (const tiles of nearly) expect(chosen('strong', holding(asking, tiles))).toMatchObject({ count: 0 });
    expect(chosen('strong', holding(asking, scattered))).toMatchObject({ count: 3 });
    for (const hand of hands) {
      const rack = [...drawn(facesOf(hand), 12, random), ...otherTiles(hand, 1)];
      expect(chosen('strong', holding(asking, rack))).toMatchObject({ count: 1 });
    }
  });
});

describe('the risk of passes (rules of thumb: common practice, no source)', () => {
  function gradesOf(style: StyleName): Map<RiskGrade, number> {
    const grades = new Map<RiskGrade, number>();
    for (let deal = 0; deal < 12; deal++) {
      const round = begin(openRound({ seed: seedNamed(`gifts ${deal}`), dealer: 0 }, { revealRacks: false }));
      const { resolved } = finishRound(round, (view, own) => chooseFor(style, view, kernel, own)).round;
      for (const step of resolved) {
        if (step.kind !== 'move') continue;
        for (const tiles of step.gave) {
          const grade = riskGrade(tiles);
          grades.set(grade, (grades.get(grade) ?? 0) + 1);
        }
      }
    }
    return grades;
  }

  it('is much lower for the guarded style than for the strong one, in pairs and like numbers', () => {
    const strong = gradesOf('strong');
    const guarded = gradesOf('guarded');
    for (const grade of ['pair', 'like-numbers'] as const) {
      expect(strong.get(grade) ?? 0).toBeGreaterThan(5);
      expect(guarded.get(grade) ?? 0).toBeLessThan((strong.get(grade) ?? 0) / 2);
    }
  });
});
