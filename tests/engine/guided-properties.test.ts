// What holds in every guided deal, whatever the seat itself and its class have chosen.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { advanceGuidedDeal } from '../../shared-engine/drill/guided.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { evolve, replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOfOutcome } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { addTo, type Bag, FULL_SET, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../kit/reviews.ts';
import { anyChoice, opened, type Played, playOn, seatsToAct } from '../kit/rounds.ts';

const names = fc.string({ minLength: 1, maxLength: 12 });
const seats = fc.constantFrom(...SEATS);
const RUNS = { numRuns: 40 };

interface GuidedTable {
  /** At every step: after the seat's own choice, and after the table continued from the class's choice. */
  readonly stages: readonly Round[];
  readonly log: readonly RoundEvent[];
  /** The round of the class's choices alone. */
  readonly classRound: Round;
}

/** A table whose seat chooses one thing at each step while its class continues from another, to the close. */
function guidedTable(name: string, dealer: Seat, seat: Seat): GuidedTable {
  const random = stream(name, 'table');
  let table: Played = opened(name, dealer);
  let classRound = table.round;
  const stages: Round[] = [table.round];
  for (;;) {
    const steps = table.round.resolved.length;
    const ownTable = playOn(table, random, ({ resolved }) => resolved.length > steps);
    stages.push(ownTable.round);
    const wanted = seatsToAct(classRound).includes(seat) ? anyChoice(classRound, seat, random) : null;
    const next = advanceGuidedDeal(classRound, ownTable.round.resolved[steps]!, seat, wanted);
    if (!next.ok) throw new Error(next.message);
    const { outcome, closed } = next;
    classRound = evolve(classRound, { kind: 'resolved', outcome });
    // A table of a guided deal does not close by itself.
    const before = ownTable.log.filter(({ kind }) => kind !== 'closed');
    const log: RoundEvent[] = [...before, { kind: 'advanced', outcome }, ...(closed ? [CLOSED] : [])];
    table = { log, round: replay(log)! };
    stages.push(table.round);
    if (closed) return { stages, log, classRound: evolve(classRound, CLOSED) };
  }
}

const CLOSED: RoundEvent = { kind: 'closed' };

describe('in a guided deal', () => {
  test('L1 S1 tiles are conserved at every step, and each rack keeps its size', () => {
    fc.assert(
      fc.property(names, seats, seats, (name, dealer, seat) => {
        for (const round of guidedTable(name, dealer, seat).stages) {
          const { wall } = dealTiles(round.deal);
          const all = round.racks.reduce<Bag>(
            (sum, rack) => sum.map((n, i) => n + rack[i]!),
            addTo(NOTHING, wall),
          );
          expect(all).toEqual(FULL_SET);
          for (const one of SEATS) expect(sizeOf(round.racks[one])).toBe(one === dealer ? 14 : 13);
        }
      }),
      RUNS,
    );
  });

  test('L1 a table stands where the class stands; L2 it also has its own outcome of each step', () => {
    fc.assert(
      fc.property(names, seats, seats, (name, dealer, seat) => {
        const { stages, classRound } = guidedTable(name, dealer, seat);
        const last = stages.at(-1)!;
        const { actualSteps, ...round } = last;
        expect(round).toEqual(classRound);
        const ownTable = stages.filter((_, n) => n % 2 === 1).map(({ resolved }) => resolved.at(-1));
        expect(actualSteps).toEqual(ownTable);
      }),
      RUNS,
    );
  });

  test('E2 the log of a table replays to the same round, also after it was text', () => {
    fc.assert(
      fc.property(names, seats, seats, (name, dealer, seat) => {
        const { stages, log } = guidedTable(name, dealer, seat);
        const read = JSON.parse(JSON.stringify(log));
        expect(JSON.stringify(replay(read))).toBe(JSON.stringify(stages.at(-1)));
      }),
      RUNS,
    );
  });

  test('V1 L2 no other seat’s view shows what a seat chose itself; V2 neither does a spectator’s', () => {
    fc.assert(
      fc.property(names, seats, seats, (name, dealer, seat) => {
        for (const round of guidedTable(name, dealer, seat).stages) {
          const { actualSteps, ...without } = round;
          expect(viewFor(round, { kind: 'spectator' })).toEqual(viewFor(without, { kind: 'spectator' }));
          for (const one of SEATS) {
            const { record, ...view } = seatView(round, one);
            const bare = seatView(without, one);
            expect({ ...view, record: bare.record }).toEqual(bare);
            expect(record.actualSteps?.map((step) => step?.kind === 'move' && step.gave)).toEqual(
              actualSteps?.map((step) => step?.kind === 'move' && step.gave[one]),
            );
          }
        }
      }),
      RUNS,
    );
  });

  test('L2 each own choice is rated as at a table that played the class’s choices up to it and then its own', () => {
    for (const name of ['one', 'two']) {
      const { stages } = guidedTable(name, 1, 0);
      const { record } = seatView(stages.at(-1)!, 0);
      const judged = stages
        .filter((_, n) => n % 2 === 1)
        .map((round) => {
          const { actualSteps, ...alone } = seatView(round, 0).record;
          const step = (actualSteps ?? []).length;
          const last = reviewRound(alone, houseKernel).choices.filter(
            (one) => one.step === stepOfOutcome(alone.steps[step]!),
          );
          return {
            last,
            questions: decisionsIn(alone).filter((one) => one.offered.chosen === alone.steps[step]),
          };
        });
      expect(reviewRound(record, houseKernel).choices).toEqual(judged.flatMap(({ last }) => last));
      expect(decisionsIn(record)).toEqual(judged.flatMap(({ questions }) => questions));
    }
  });

  test('E1 a guided deal does not continue without a choice if the seat has one to make', () => {
    const table = playOn(opened('rejected'), stream('rejected', 'p'), ({ resolved }) => resolved.length > 0);
    const [at] = table.round.resolved;
    const classRound = opened('rejected').round;
    expect(advanceGuidedDeal(classRound, at!, 0, null)).toMatchObject({ ok: false, code: 'wrong-step' });
    const joker = {
      kind: 'pass',
      step: 'first-right',
      tiles: ['joker', 'joker', 'joker'],
      blind: 0,
    } as const;
    expect(advanceGuidedDeal(classRound, at!, 0, joker)).toMatchObject({ ok: false, code: 'joker-in-pass' });
  });
});

const NOTHING: Bag = FULL_SET.map(() => 0);
