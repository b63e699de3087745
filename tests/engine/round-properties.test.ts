// What holds in every round, whatever the four seats do.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { Choice } from '../../shared-engine/rules/exchange/command.ts';
import { decide } from '../../shared-engine/rules/exchange/decide.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { addTo, type Bag, FULL_SET, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { choiceObjection } from '../../shared-engine/rules/view/pending-decision.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { anyChoice, opened, playOn, seatsToAct } from '../kit/rounds.ts';

const names = fc.string({ minLength: 1, maxLength: 12 });
const dealers = fc.constantFrom(...SEATS);
const RUNS = { numRuns: 60 };

/** Every round on the way from the deal to the close. */
function stages(name: string, dealer: 0 | 1 | 2 | 3): Round[] {
  const random = stream(name, 'players');
  const rounds: Round[] = [];
  const last = playOn(opened(name, dealer), random, (round) => {
    rounds.push(round);
    return false;
  });
  return [...rounds, last.round];
}

describe('in every round', () => {
  test('S1 C1 racks and wall are always the whole set, and each rack keeps its size', () => {
    fc.assert(
      fc.property(names, dealers, (name, dealer) => {
        const { wall } = dealTiles(opened(name, dealer).round.deal);
        for (const round of stages(name, dealer)) {
          const all = round.racks.reduce<Bag>(
            (sum, rack) => sum.map((count, i) => count + rack[i]!),
            addTo(empty(), wall),
          );
          expect(all).toEqual(FULL_SET);
          for (const seat of SEATS) expect(sizeOf(round.racks[seat])).toBe(seat === dealer ? 14 : 13);
        }
      }),
      RUNS,
    );
  });

  test('C2 Y2 every seat keeps the jokers it was dealt', () => {
    fc.assert(
      fc.property(names, dealers, (name, dealer) => {
        const all = stages(name, dealer);
        for (const round of all) {
          for (const seat of SEATS) expect(round.racks[seat][35]).toBe(all[0]!.racks[seat][35]);
        }
      }),
      RUNS,
    );
  });

  test('E2 replaying the log gives the same round, bit for bit', () => {
    fc.assert(
      fc.property(names, dealers, (name, dealer) => {
        const played = playOn(opened(name, dealer), stream(name, 'players'));
        expect(JSON.stringify(replay(played.log))).toBe(JSON.stringify(played.round));
        const read = JSON.parse(JSON.stringify(played.log));
        expect(JSON.stringify(replay(read))).toBe(JSON.stringify(played.round));
      }),
      RUNS,
    );
  });

  test('E2 a log that does not begin with a deal gives no round', () => {
    expect(replay([])).toBeNull();
    expect(replay([{ kind: 'closed' }])).toBeNull();
  });

  test('Z1 every round closes within nine steps', () => {
    fc.assert(
      fc.property(names, dealers, (name, dealer) => {
        const last = stages(name, dealer).at(-1)!;
        expect(last.phase).toBe('closed');
        expect(last.resolved.length).toBeLessThanOrEqual(9);
      }),
      RUNS,
    );
  });

  test('E1 a command is rejected with one code or causes events, and the page rejects the same commands', () => {
    const seen = new Set<string>();
    const tiles = fc.array(fc.constantFrom(...facesOf(FULL_SET)), { maxLength: 5 });
    const steps = fc.constantFrom(
      ...(['first-right', 'first-left', 'second-right', 'courtesy-pass'] as const),
    );
    const choices: fc.Arbitrary<Choice> = fc.oneof(
      fc.record({
        kind: fc.constant('pass' as const),
        step: steps,
        tiles,
        blind: fc.integer({ min: -1, max: 4 }),
      }),
      fc.record({ kind: fc.constant('withdraw' as const), step: steps }),
      fc.record({ kind: fc.constant('vote' as const), step: fc.constant('vote' as const), go: fc.boolean() }),
      fc.record({
        kind: fc.constant('ask' as const),
        step: fc.constant('courtesy-ask' as const),
        count: fc.integer({ min: -1, max: 4 }),
      }),
    );
    fc.assert(
      fc.property(fc.nat(40), fc.constantFrom(...SEATS), choices, fc.nat(30), (name, seat, choice, depth) => {
        let steps = 0;
        const { round } = playOn(opened(`${name}`), stream(`${name}`, 'players'), () => steps++ >= depth);
        const before = JSON.stringify(round);
        const decision = decide(round, { ...choice, seat, by: 'player' });
        expect(JSON.stringify(round)).toBe(before);
        seen.add(decision.ok ? 'accepted' : decision.code);
        if (decision.ok) expect(decision.events.length).toBeGreaterThan(0);
        // The page asks the same of the seat's own view and gets the same answer.
        const objection = choiceObjection(seatView(round, seat), choice);
        expect(objection).toEqual(decision.ok ? null : decision);
      }),
      { numRuns: 1500 },
    );
    expect(seen.size).toBeGreaterThan(6);
  });

  test('the seats that owe an answer are exactly those whose choice is accepted', () => {
    for (const round of stages('owing', 0).slice(0, -1)) {
      const random = stream('owing', 'again');
      for (const seat of SEATS) {
        const accepted =
          (round.phase !== 'giving' || round.counts[seat] > 0) &&
          decide(round, { ...anyChoice(round, seat, random), seat, by: 'bot' }).ok;
        expect(accepted).toBe(seatsToAct(round).includes(seat));
      }
    }
  });
});

function empty(): Bag {
  return FULL_SET.map(() => 0);
}
