// A review knows what its seat knew and nothing else, and says the same each time.
import { describe, expect, test } from 'vitest';
import {
  addTo,
  type Bag,
  bagOf,
  countOf,
  FACES,
  type Face,
  facesOf,
  type Round,
  reviewRound,
  reviewSchema,
  SEATS,
  type Seat,
  seatView,
  takeFrom,
  withSeat,
} from '../../shared-engine/index.ts';
import { houseKernel, mixedRound, records } from '../kit/reviews.ts';
import { act, opened, type Played } from '../kit/rounds.ts';

/** The commands of a round, in the order they were given. */
function replayed(start: Played, log: Played['log']): Played {
  return log.reduce((now, event) => {
    switch (event.kind) {
      case 'sealed': {
        const { seat, step, pass } = event;
        return act(now, { kind: 'seal', seat, step, tiles: pass.tiles, blind: pass.blind, by: pass.by });
      }
      case 'voted':
        return act(now, { kind: 'vote', step: 'vote', seat: event.seat, go: event.go, by: event.by });
      case 'asked':
        return act(now, {
          kind: 'ask',
          step: 'courtesy-ask',
          seat: event.seat,
          count: event.count,
          by: event.by,
        });
      default:
        return now;
    }
  }, start);
}

/** A tile that this seat held from first to last and of which it never had to show a copy. */
function keeper(round: Round, start: Bag, seat: Seat, other: Bag): Face | undefined {
  return FACES.find(
    (face) =>
      countOf(start, face) > 0 &&
      countOf(other, face) === 0 &&
      round.settled.every((step) => step.kind !== 'move' || !step.own[seat].includes(face)),
  );
}

function exchanged(bag: Bag, gone: Face, came: Face): Bag {
  return addTo(takeFrom(bag, [gone])!, [came]);
}

describe('privacy', () => {
  test('V1 Z1 rounds that differ in hidden racks alone give byte-identical reviews', () => {
    let pairs = 0;
    for (let n = 0; n < 24; n++) {
      const name = `hidden ${n}`;
      const me = SEATS[n % 4]!;
      const [one, two] = SEATS.filter((seat) => seat !== me) as [Seat, Seat, Seat];
      const first = mixedRound(name);
      const { racks } = opened(name).round;
      const a = keeper(first.round, racks[one], one, racks[two]);
      const b = keeper(first.round, racks[two], two, racks[one]);
      if (a === undefined || b === undefined) continue;
      const begun = opened(name);
      const swapped: Played = {
        ...begun,
        round: {
          ...begun.round,
          racks: withSeat(
            withSeat(racks, one, exchanged(racks[one], a, b)),
            two,
            exchanged(racks[two], b, a),
          ),
        },
      };
      const second = replayed(swapped, first.log);
      expect(second.round.phase).toBe('closed');
      expect(facesOf(second.round.racks[one])).not.toEqual(facesOf(first.round.racks[one]));
      const mine = seatView(first.round, me);
      const same = seatView(second.round, me);
      expect(same).toEqual(mine);
      expect(JSON.stringify(reviewRound(same.record, houseKernel))).toBe(
        JSON.stringify(reviewRound(mine.record, houseKernel)),
      );
      pairs++;
    }
    expect(pairs).toBeGreaterThan(15);
  });

  test('V1 a review names no tile that its seat did not hold', () => {
    for (const record of records('held', 12)) {
      const moves = record.steps.filter((step) => step.kind === 'move');
      const known = new Set([...record.start, ...moves.flatMap((step) => step.received)]);
      for (const choice of reviewRound(record, houseKernel).choices) {
        if (choice.kind !== 'pass') continue;
        for (const { tiles } of choice.alternatives) for (const face of tiles) expect(known).toContain(face);
        for (const { face } of choice.parts.groups) expect(known).toContain(face);
      }
    }
  });
});

describe('repetition', () => {
  test('the same record gives the same bytes, whatever was reviewed before', () => {
    const [first, second] = records('twice', 2);
    const once = JSON.stringify(reviewRound(first!, houseKernel));
    reviewRound(second!, houseKernel);
    expect(JSON.stringify(reviewRound(structuredClone(first!), houseKernel))).toBe(once);
  });

  test('the order in which a rack was dealt does not matter', () => {
    const [record] = records('order', 1);
    const turned = { ...record!, start: [...record!.start].reverse() };
    expect(bagOf(turned.start)).toEqual(bagOf(record!.start));
    expect(reviewRound(turned, houseKernel)).toEqual(reviewRound(record!, houseKernel));
  });
});

describe('the message it travels in', () => {
  test('every review parses as what it is', () => {
    for (const record of records('parsed', 16)) {
      const review = reviewRound(record, houseKernel);
      expect(reviewSchema.parse(JSON.parse(JSON.stringify(review)))).toEqual(review);
    }
  });

  test('every family named in it can be read without the card', () => {
    for (const record of records('named', 8)) {
      const { choices, families } = reviewRound(record, houseKernel);
      for (const choice of choices) {
        if (choice.kind !== 'pass') continue;
        for (const id of [...choice.open, ...choice.openAfter, ...choice.openAfterBest]) {
          expect(families[id]).toBeTruthy();
        }
      }
    }
  });
});
