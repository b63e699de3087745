// The rollout bot: legal, without sight of other seats, the same with the SIMD module and without.
import { describe, expect, it } from 'vitest';
import { createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { objectionTo } from '../../shared-engine/rules/exchange/decide.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { analystOf } from '../kit/analysts.ts';
import { randomCard } from '../kit/random-card.ts';
import { opened, playOn, seatsToAct } from '../kit/rounds.ts';

const kernel = createSwarKernel(randomCard('bots', 24, 6));

function chosen(round: Round, seat: Seat, seed = 'draws'): AnswerChoice | null {
  return chooseFor('thoughtful', seatView(round, seat), kernel, stream(seed, `${seat}`), analystOf);
}

/** The states of one round played by evenly drawn choices. */
function statesOf(name: string): Round[] {
  const random = stream(name, 'states');
  const states: Round[] = [];
  let played = opened(name, SEATS[random.below(4)]!);
  while (played.round.phase !== 'closed') {
    states.push(played.round);
    let more = 1;
    played = playOn(played, random, () => more-- <= 0);
  }
  return states;
}

describe('a thoughtful bot', () => {
  it('answers legally at every step (C1 C2 B1 O1 Y1 Y2)', () => {
    const wrong: unknown[] = [];
    const steps = new Set<string>();
    for (const name of ['one', 'two', 'three']) {
      for (const [index, round] of statesOf(name).entries()) {
        const waiting = seatsToAct(round);
        const seat = waiting[index % waiting.length]!;
        const choice = chosen(round, seat);
        if (choice === null || objectionTo(round, seat, choice)) wrong.push({ round, seat, choice });
        if (choice) steps.add(choice.step);
      }
    }
    expect(wrong).toEqual([]);
    expect(steps.size).toBe(9);
  });

  it('answers nothing where nothing is asked of its seat', () => {
    const closed = playOn(opened('silent'), stream('silent', 'x')).round;
    expect(chosen(closed, 0)).toBeNull();
  });

  it('C2 keeps all eight jokers, however alike the other tiles', () => {
    const jokers = new Array<Face>(8).fill('joker');
    const five: readonly Face[] = ['flower', 'flower', 'flower', 'flower', 'flower'];
    const rack = [...jokers, ...five];
    const view = seatView(opened('holding').round, 1);
    const held = { ...view, rack, record: { ...view.record, start: rack } };
    expect(chooseFor('thoughtful', held, kernel, stream('jokers', 'x'), analystOf)).toMatchObject({
      tiles: ['flower', 'flower', 'flower'],
      blind: 0,
    });
  });

  it('V1 chooses alike in two rounds that look the same to its seat', () => {
    for (const round of statesOf('swapped').filter((now) => seatsToAct(now).includes(2))) {
      const [east, right, own, left] = round.racks;
      const other = { ...round, racks: [east, left, own, right] as const };
      expect(seatView(other, 2)).toEqual(seatView(round, 2));
      expect(chosen(other, 2)).toEqual(chosen(round, 2));
    }
  });

  it('answers the same without the SIMD module, for the same random numbers', () => {
    const withoutSimd = createAnalyst(kernel.card, NO_SIMD);
    for (const round of statesOf('plain').filter((_, index) => index % 9 === 0)) {
      const seat = seatsToAct(round)[0]!;
      const choice = chooseFor(
        'thoughtful',
        seatView(round, seat),
        kernel,
        stream('same', 'x'),
        () => withoutSimd,
      );
      expect(chooseFor('thoughtful', seatView(round, seat), kernel, stream('same', 'x'), analystOf)).toEqual(
        choice,
      );
    }
  });
});
