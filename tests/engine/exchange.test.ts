// The steps of a round, and the commands that each step accepts or rejects.
import { describe, expect, test } from 'vitest';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { neighbor, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { Command } from '../../shared-engine/rules/exchange/command.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import type { Step } from '../../shared-engine/rules/exchange/schedule.ts';
import { addTo, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { anyChoice, apply, opened, type Played, playOn, rejectionOf } from '../kit/rounds.ts';

/** The first tiles of a rack that may be passed. */
function spare(round: Round, seat: Seat, count = 3): Face[] {
  return facesOf(round.racks[seat])
    .filter((face) => face !== 'joker')
    .slice(0, count);
}

function passOf(round: Round, seat: Seat, tiles = spare(round, seat), blind = 0): Command {
  const step = round.phase === 'passing' ? round.step : 'courtesy-pass';
  return { kind: 'pass', step, tiles, blind, seat, by: 'player' };
}

function until(name: string, phase: Round['phase'], step?: string): Played {
  const random = stream(name, 'players');
  return playOn(
    opened(name),
    random,
    (r) => r.phase === phase && (r.phase !== 'passing' || r.step === step),
    anyChoiceContinuing,
  );
}

const anyChoiceContinuing: typeof anyChoice = (round, seat, random) =>
  round.phase === 'voting' ? { kind: 'vote', step: 'vote', go: true } : anyChoice(round, seat, random);

function vote(played: Played, votes: readonly boolean[]): Played {
  return SEATS.reduce(
    (now, seat) => apply(now, { kind: 'vote', step: 'vote', go: votes[seat]!, seat, by: 'player' }),
    played,
  );
}

function ask(played: Played, counts: readonly number[]): Played {
  return SEATS.reduce(
    (now, seat) =>
      apply(now, { kind: 'ask', step: 'courtesy-ask', count: counts[seat]!, seat, by: 'player' }),
    played,
  );
}

describe('a pass', () => {
  test.each([
    ['first-right', 'right'],
    ['first-across', 'across'],
    ['second-across', 'across'],
  ] as const)(
    'C1 O2 at %s each seat passes three tiles to that neighbor, all four at once',
    (step, toward) => {
      let now = until('directions', 'passing', step);
      const before = now.round.racks;
      const passes = SEATS.map((seat) => spare(now.round, seat));
      for (const seat of SEATS) {
        expect(now.round.racks).toEqual(before);
        now = apply(now, passOf(now.round, seat));
      }
      for (const seat of SEATS) {
        const to = neighbor(seat, toward);
        const expected = addTo(takeFrom(before[to], passes[to]!) ?? [], passes[seat]!);
        expect(now.round.racks[to]).toEqual(expected);
      }
    },
  );

  test('C1 the first Charleston goes right, across and left, and the vote follows', () => {
    const steps: (Step | null)[] = [];
    playOn(opened('order'), stream('order', 'players'), (round) => {
      const step = stepOf(round);
      if (steps.at(-1) !== step) steps.push(step);
      return step === 'vote';
    });
    expect(steps).toEqual(['first-right', 'first-across', 'first-left', 'vote']);
  });

  test.each([
    [0, 'Choose 3 more tiles.'],
    [1, 'Choose 2 more tiles.'],
    [2, 'Choose one more tile.'],
    [4, 'Take one tile back.'],
    [5, 'Take 2 tiles back.'],
  ])('C1 a pass of %i tiles is rejected, with the number that is missing or too many', (count, message) => {
    const { round } = opened('counts');
    const rejection = rejectionOf(round, passOf(round, 1, spare(round, 1, count)));
    expect(rejection).toMatchObject({ code: 'wrong-count', message });
  });

  test('C2 a joker may not be passed', () => {
    const { round } = playUntilJoker();
    const seat = SEATS.find((s) => round.racks[s][35]! > 0)!;
    const tiles: Face[] = [...spare(round, seat, 2), 'joker'];
    expect(rejectionOf(round, passOf(round, seat, tiles)).code).toBe('joker-in-pass');
  });

  test('a pass is rejected with a tile that is not on the rack, also with a second copy of one that is', () => {
    const { round } = opened('held');
    const rack = facesOf(round.racks[0]);
    const single = rack.find((face) => face !== 'joker' && rack.filter((f) => f === face).length === 1)!;
    const others = spare(round, 0).filter((face) => face !== single);
    expect(rejectionOf(round, passOf(round, 0, [single, single, others[0]!])).code).toBe('tile-not-held');
  });

  test('C4 a submitted pass may be withdrawn until the fourth seat submits, and submitted again', () => {
    let now = opened('back');
    const step = 'first-right';
    for (const seat of [0, 1, 2] as const) now = apply(now, passOf(now.round, seat));
    now = apply(now, { kind: 'withdraw', step, seat: 1, by: 'player' });
    const other = facesOf(now.round.racks[1])
      .filter((face) => face !== 'joker')
      .slice(-3);
    now = apply(now, passOf(now.round, 1, other));
    now = apply(now, passOf(now.round, 3));
    expect(now.round.resolved[0]).toMatchObject({ gave: { 1: other } });
    expect(rejectionOf(now.round, { kind: 'withdraw', step, seat: 1, by: 'player' }).code).toBe('wrong-step');
  });

  test('C4 a pass that was not submitted cannot be withdrawn', () => {
    const { round } = opened('nothing');
    const rejection = rejectionOf(round, { kind: 'withdraw', step: 'first-right', seat: 2, by: 'player' });
    expect(rejection.code).toBe('nothing-to-withdraw');
  });

  test('E1 a second answer, a wrong step and a closed round are rejected with a message, and nothing changes', () => {
    const now = apply(opened('twice'), passOf(opened('twice').round, 0));
    const wrongStep: Command = {
      kind: 'pass',
      step: 'first-left',
      tiles: spare(now.round, 1),
      blind: 0,
      seat: 1,
      by: 'player',
    };
    const closed = playOn(opened('shut'), stream('shut', 'players')).round;
    const cases = [
      [now.round, passOf(now.round, 0), 'already-answered'],
      [now.round, wrongStep, 'wrong-step'],
      [now.round, { kind: 'ask', step: 'courtesy-ask', count: 1, seat: 1, by: 'player' }, 'wrong-step'],
      [closed, { ...wrongStep, step: 'first-right' }, 'round-closed'],
    ] as const;
    for (const [round, command, code] of cases) {
      const before = JSON.stringify(round);
      const rejection = rejectionOf(round, command);
      expect(rejection.code).toBe(code);
      expect(rejection.message).toMatch(/^[A-Z].*\.$/);
      expect(JSON.stringify(round)).toBe(before);
    }
  });
});

describe('the vote', () => {
  test('O1 after four votes to continue second left is open', () => {
    const { round } = vote(until('vote', 'voting'), [true, true, true, true]);
    expect(round).toMatchObject({ phase: 'passing', step: 'second-left' });
  });

  test.each([0, 1, 2, 3])('O1 one vote to stop, by seat %i, ends the Charleston', (stopper) => {
    const { round } = vote(
      until('vote', 'voting'),
      SEATS.map((seat) => seat !== stopper),
    );
    expect(round.phase).toBe('asking');
  });

  test('E1 O1 a seat cannot vote twice', () => {
    const one = apply(until('vote', 'voting'), {
      kind: 'vote',
      step: 'vote',
      go: true,
      seat: 2,
      by: 'player',
    });
    const again: Command = { kind: 'vote', step: 'vote', go: false, seat: 2, by: 'player' };
    expect(rejectionOf(one.round, again).code).toBe('already-answered');
  });
});

describe('the courtesy pass', () => {
  test('Y1 the smaller courtesy number holds for both seats of a pair', () => {
    const { round } = ask(until('ask', 'asking'), [3, 2, 1, 2]);
    expect(round).toMatchObject({ phase: 'giving', counts: [1, 2, 1, 2] });
  });

  test('Y1 Z1 the round closes where both pairs agree on no tiles', () => {
    expect(ask(until('ask', 'asking'), [3, 0, 0, 2]).round.phase).toBe('closed');
  });

  test.each([-1, 4, 1.5, Number.NaN])('Y1 asking for %d tiles is rejected', (count) => {
    const { round } = until('ask', 'asking');
    const command: Command = { kind: 'ask', step: 'courtesy-ask', count, seat: 0, by: 'player' };
    expect(rejectionOf(round, command).code).toBe('bad-number');
  });

  test('Y2 Z1 each seat passes the agreed number across, seats that agreed on none only wait, then the round closes', () => {
    const asked = ask(until('ask', 'asking'), [2, 0, 2, 3]);
    expect(rejectionOf(asked.round, passOf(asked.round, 1)).code).toBe('nothing-to-give');
    expect(rejectionOf(asked.round, passOf(asked.round, 0)).code).toBe('wrong-count');
    const pass = spare(asked.round, 0, 2);
    const before = asked.round.racks;
    const half = apply(asked, passOf(asked.round, 0, pass));
    const whole = apply(half, passOf(half.round, 2, spare(half.round, 2, 2)));
    expect(whole.round.phase).toBe('closed');
    expect(whole.round.racks[1]).toEqual(before[1]);
    expect(whole.round.racks[2]).toEqual(addTo(takeFrom(before[2], spare(asked.round, 2, 2)) ?? [], pass));
  });

  test('Y2 C2 a joker may not be passed in the courtesy pass', () => {
    const found = playUntilJoker('giving');
    const seat = SEATS.find((s) => found.round.racks[s][35]! > 0)!;
    const rejection = rejectionOf(
      found.round,
      passOf(found.round, seat, ['joker', ...spare(found.round, seat, 2)]),
    );
    expect(rejection.code).toBe('joker-in-pass');
  });
});

/** A round in which some seat that must pass three holds a joker. */
function playUntilJoker(phase: 'passing' | 'giving' = 'passing'): Played {
  for (let n = 0; ; n++) {
    const start = opened(`joker ${n}`);
    if (!SEATS.some((seat) => start.round.racks[seat][35]! > 0)) continue;
    if (phase === 'passing') return start;
    const asking = playOn(start, stream(`joker ${n}`, 'players'), (round) => round.phase === 'asking');
    return ask(asking, [3, 3, 3, 3]);
  }
}
