// What the open step asks of a seat, in every round: told by views, held against what the rules accept.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { decide } from '../../shared-engine/rules/exchange/decide.ts';
import { hasAnswered, stepOf, stepOfOutcome } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { MOVE_STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { facesOf, sortFaces } from '../../shared-engine/rules/tiles/bag.ts';
import {
  choiceAt,
  choiceIn,
  isWaitingFor,
  pendingDecision,
} from '../../shared-engine/rules/view/pending-decision.ts';
import { seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { anyChoice, opened, playOn } from '../kit/rounds.ts';

const names = fc.string({ minLength: 1, maxLength: 12 });
const RUNS = { numRuns: 40 };

interface Made {
  readonly seat: Seat;
  readonly before: Round;
  readonly choice: AnswerChoice;
}

/** Every moment of a random round before a choice, with that choice, and the closed round. */
function played(name: string): { readonly made: readonly Made[]; readonly last: Round } {
  const made: Made[] = [];
  const { round } = playOn(
    opened(name),
    stream(name, 'players'),
    () => false,
    (before, seat, random) => {
      const choice = anyChoice(before, seat, random);
      made.push({ seat, before, choice });
      return choice;
    },
  );
  return { made, last: round };
}

/** One choice of each kind, step, number of tiles and blind number that this seat could send. */
function attempts(round: Round, seat: Seat): AnswerChoice[] {
  const tiles = facesOf(round.racks[seat]).filter((face) => face !== 'joker');
  const passes = MOVE_STEPS.flatMap((step) =>
    [0, 1, 2, 3].flatMap((count) =>
      [0, 1, 2, 3].map((blind) => ({ kind: 'pass', step, tiles: tiles.slice(0, count), blind }) as const),
    ),
  );
  return [
    ...passes,
    { kind: 'vote', step: 'vote', go: true },
    { kind: 'ask', step: 'courtesy-ask', count: 1 },
  ];
}

test('a seat’s pending decision names exactly the kind, step and number of tiles that the rules accept', () => {
  fc.assert(
    fc.property(names, (name) => {
      const { made, last } = played(name);
      for (const round of [...made.map(({ before }) => before), last]) {
        for (const seat of SEATS) {
          const decision = pendingDecision(seatView(round, seat));
          for (const choice of attempts(round, seat)) {
            const fits =
              decision?.kind === choice.kind &&
              decision.step === choice.step &&
              (decision.kind !== 'pass' ||
                choice.kind !== 'pass' ||
                (choice.tiles.length + choice.blind === decision.count &&
                  (choice.blind === 0 || decision.blindAllowed)));
            expect(decide(round, { ...choice, seat, by: 'player' }).ok).toBe(fits);
          }
        }
      }
    }),
    { numRuns: 8 },
  );
});

test('a round and each view of it name the same open step, and every choice made names that step', () => {
  fc.assert(
    fc.property(names, (name) => {
      const { made, last } = played(name);
      for (const { before, seat, choice } of made) {
        expect(stepOf(before)).toBe(choice.step);
        expect(stepOf(seatView(before, seat).stage)).toBe(choice.step);
        expect(stepOf(viewFor(before, { kind: 'spectator' }).stage)).toBe(choice.step);
      }
      expect(stepOf(last)).toBeNull();
      expect(stepOf(seatView(last, 0).stage)).toBeNull();
      expect(last.resolved.map(stepOfOutcome)).toEqual([...new Set(made.map(({ choice }) => choice.step))]);
    }),
    RUNS,
  );
});

test('a view tells the answer its seat has given as the choice it was, and tells no other seat of it', () => {
  fc.assert(
    fc.property(names, (name) => {
      const { made, last } = played(name);
      const given = new Map<string, AnswerChoice>();
      for (const { before, seat, choice } of made) {
        expect(choiceIn(seatView(before, seat))).toBeNull();
        given.set(`${choice.step} ${seat}`, choice);
        for (const other of SEATS) {
          const view = seatView(before, other);
          const known = given.get(`${stepOf(before)} ${other}`);
          if (other !== seat) expect(choiceIn(view)).toEqual(known ?? null);
          expect(isWaitingFor(view.stage, other)).toBe(pendingDecision(view) !== null);
          expect(view.answer !== null).toBe(hasAnswered(before, other));
        }
      }
      for (const seat of SEATS) {
        expect(choiceIn(seatView(last, seat))).toBeNull();
        for (const step of seatView(last, seat).record.steps) {
          const choice = given.get(`${stepOfOutcome(step)} ${seat}`) ?? null;
          const expected = choice?.kind === 'pass' ? { ...choice, tiles: sortFaces(choice.tiles) } : choice;
          expect(choiceAt(step, seat)).toEqual(expected);
        }
      }
    }),
    RUNS,
  );
});
