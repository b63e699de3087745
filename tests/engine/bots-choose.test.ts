// Bots choose legally, from what their seat may see alone.
import { describe, expect, it } from 'vitest';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { STYLES, type StyleName } from '../../shared-engine/policy/styles.ts';
import { drawn, type Random, stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, SEATS, type Seat, withSeat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { objectionTo } from '../../shared-engine/rules/exchange/decide.ts';
import type { Resolved, Round, SubmittedPass } from '../../shared-engine/rules/exchange/round.ts';
import { bagOf, FULL_SET, facesOf, sizeOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { randomCard } from '../kit/random-card.ts';
import { opened, playOn, seatsToAct } from '../kit/rounds.ts';

const kernel = createSwarKernel(randomCard('bots', 24, 6));

/** Styles without rollouts; the other has tests of its own. */
const QUICK = STYLES.filter((style) => style !== 'thoughtful');

/** Every state in which seats still owe an answer, along rounds played by evenly drawn choices. */
function statesOf(name: string, rounds: number): Round[] {
  const random = stream(name, 'states');
  const states: Round[] = [];
  for (let index = 0; index < rounds; index++) {
    let played = opened(`${name} ${index}`, SEATS[index % 4]!);
    while (played.round.phase !== 'closed') {
      states.push(played.round);
      let more = 1;
      played = playOn(played, random, () => more-- <= 0);
    }
  }
  return states;
}

function chosen(style: StyleName, round: Round, seat: Seat, seed: string): AnswerChoice | null {
  return chooseFor(style, seatView(round, seat), kernel, stream(seed, `${style} ${seat}`));
}

/** A round at its first pass in which one seat holds these tiles. */
function holding(tiles: readonly Face[]): Round {
  const { round } = opened('holding');
  return { ...round, racks: withSeat(round.racks, 1, bagOf(tiles)) };
}

describe('a bot', () => {
  it('answers legally in thousands of states of every step (C1 C2 B1 O1 Y1 Y2)', () => {
    const wrong: unknown[] = [];
    const kinds = new Set<string>();
    for (const [index, round] of statesOf('legal', 80).entries()) {
      for (const seat of seatsToAct(round)) {
        const style = QUICK[(index + seat) % QUICK.length]!;
        const choice = chosen(style, round, seat, `legal ${index}`);
        if (choice === null || objectionTo(round, seat, choice)) wrong.push({ round, seat, choice });
        if (choice) kinds.add(`${style} ${choice.step}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(kinds.size).toBe(QUICK.length * 9);
  });

  it('answers nothing where nothing is asked of its seat', () => {
    for (const round of [...statesOf('silent', 20), playOn(opened('silent'), stream('silent', 'x')).round]) {
      for (const seat of SEATS) {
        if (seatsToAct(round).includes(seat)) continue;
        for (const style of QUICK) expect(chosen(style, round, seat, 'silent')).toBeNull();
      }
    }
  });

  it('C2 passes none of eight jokers, however alike the five other tiles are', () => {
    const jokers = new Array<Face>(8).fill('joker');
    const fives: readonly Face[][] = [
      ['east', 'east', 'east', 'east', 'north'],
      ['flower', 'flower', 'flower', 'flower', 'flower'],
      ['bam-1', 'bam-1', 'crak-2', 'crak-2', 'dot-3'],
    ];
    for (const five of fives) {
      const round = holding([...jokers, ...five]);
      for (const style of QUICK) {
        const choice = chosen(style, round, 1, 'jokers');
        expect(choice && objectionTo(round, 1, choice)).toBeNull();
        expect(choice?.kind === 'pass' && choice.tiles.length).toBe(3);
      }
    }
  });
});

describe('V1 a bot sees the view of its seat alone and', () => {
  it('chooses alike in two rounds that look the same to its seat', () => {
    const random = stream('disguise', 'hidden');
    let compared = 0;
    for (const [index, round] of statesOf('disguise', 30).entries()) {
      for (const seat of seatsToAct(round)) {
        const other = disguised(round, seat, random);
        expect(seatView(other, seat)).toEqual(seatView(round, seat));
        expect(other).not.toEqual(round);
        const style = QUICK[(index + seat) % QUICK.length]!;
        expect(chosen(style, other, seat, 'same')).toEqual(chosen(style, round, seat, 'same'));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(1500);
  });

  it('answers the same when asked twice with the same random numbers', () => {
    for (const round of statesOf('twice', 3)) {
      for (const seat of seatsToAct(round)) {
        for (const style of QUICK) {
          expect(chosen(style, round, seat, 'twice')).toEqual(chosen(style, round, seat, 'twice'));
        }
      }
    }
  });
});

/** Another round with the same view from one seat: all that the others hold, gave, received or submitted is different. */
function disguised(round: Round, seat: Seat, random: Random): Round {
  const hidden = facesOf(takeFrom(FULL_SET, facesOf(round.racks[seat])) ?? FULL_SET);
  const others = (count: number) => drawn(hidden, count, random);
  const racks = forFour((s) => (s === seat ? round.racks[s] : bagOf(others(sizeOf(round.racks[s])))));
  const resolved = round.resolved.map((step): Resolved => {
    if (step.kind !== 'move') return step;
    const veil = (s: Seat, tiles: readonly Face[]) => (s === seat ? tiles : others(tiles.length));
    return {
      ...step,
      gave: forFour((s) => veil(s, step.gave[s])),
      forwarded: forFour((s) => others(step.forwarded[s].length)),
      received: forFour((s) => veil(s, step.received[s])),
    };
  });
  switch (round.phase) {
    case 'passing':
    case 'giving': {
      const submitted = forFour((s): SubmittedPass | null => {
        const pass = round.submitted[s];
        return pass && s !== seat ? { ...pass, tiles: others(pass.tiles.length) } : pass;
      });
      return { ...round, racks, resolved, submitted };
    }
    case 'voting': {
      const votes = forFour((s) => {
        const vote = round.votes[s];
        return vote && s !== seat ? { ...vote, value: !vote.value } : vote;
      });
      return { ...round, racks, resolved, votes };
    }
    case 'asking': {
      const asks = forFour((s) => {
        const ask = round.asks[s];
        return ask && s !== seat ? { ...ask, value: 3 - ask.value } : ask;
      });
      return { ...round, racks, resolved, asks };
    }
    case 'closed':
      return { ...round, racks, resolved };
  }
}
