// What each audience may know of a round, and that a view holds nothing else.
import { describe, expect, test } from 'vitest';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, neighbor, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { anyChoice, apply, opened, playOn } from '../kit/rounds.ts';

/** Names of faces anywhere in a value as it is sent. */
function facesIn(value: unknown): Set<string> {
  const words = JSON.stringify(value).match(/"[a-z]+(-\d)?"/g) ?? [];
  const known = new Set<string>(FACES);
  return new Set(words.map((word) => word.slice(1, -1)).filter((word) => known.has(word)));
}

function everyStage(name: string, revealRacks = false): Round[] {
  const rounds: Round[] = [];
  const last = playOn(opened(name, 1, revealRacks), stream(name, 'players'), (round) => {
    rounds.push(round);
    return false;
  });
  return [...rounds, last.round];
}

/** The same round with every tile of the other seats, and of what they submitted, replaced by one face. */
function withOthersReplaced(round: Round, seat: Seat, face: Face): Round {
  const bag = FACES.map((other) => (other === face ? 13 : 0));
  const racks = forFour((other) => (other === seat ? round.racks[seat] : bag));
  if (round.phase !== 'passing' && round.phase !== 'giving') return { ...round, racks };
  const submitted = forFour((other) => {
    const pass = round.submitted[other];
    return other === seat || pass === null ? pass : { ...pass, tiles: pass.tiles.map(() => face) };
  });
  return { ...round, racks, submitted };
}

describe('a seat', () => {
  test('V1 a seat sees its own rack, and what it gave and received, with receiver and giver', () => {
    const { round } = playOn(
      opened('mine'),
      stream('mine', 'p'),
      (r) => r.phase === 'passing' && r.step === 'first-across',
    );
    for (const seat of SEATS) {
      const view = seatView(round, seat);
      const [first] = round.resolved;
      expect(view.rack).toEqual(facesOf(round.racks[seat]));
      expect(view.record.steps).toHaveLength(1);
      expect(view.record.steps[0]).toMatchObject({
        gave: first?.kind === 'move' && first.gave[seat],
        received: first?.kind === 'move' && first.received[seat],
        to: neighbor(seat, 'right'),
        from: neighbor(seat, 'left'),
      });
    }
  });

  test('V1 C3 what the others hold or have submitted changes no byte of a seat’s view', () => {
    for (const round of everyStage('bytes').slice(0, -1)) {
      for (const seat of SEATS) {
        const replaced = withOthersReplaced(round, seat, 'joker');
        expect(JSON.stringify(seatView(replaced, seat))).toBe(JSON.stringify(seatView(round, seat)));
      }
    }
  });

  test('C3 a seat does not see what it receives before it has submitted its own three tiles', () => {
    let now = opened('wait');
    const before = seatView(now.round, 0).rack;
    const random = stream('wait', 'p');
    for (const seat of [1, 2, 3] as const) {
      now = apply(now, { ...anyChoice(now.round, seat, random), seat, by: 'player' });
      expect(seatView(now.round, 0).rack).toEqual(before);
      expect(seatView(now.round, 0).record.steps).toEqual([]);
    }
  });

  test('V1 votes and courtesy numbers of others stay hidden until all are in; who has answered is public', () => {
    for (const round of everyStage('votes')) {
      const view = seatView(round, 0);
      if (round.phase === 'voting') {
        expect(view.stage).toEqual({ phase: 'voting', answered: round.votes.map((vote) => vote !== null) });
      }
      if (round.phase === 'asking') {
        expect(view.stage).toEqual({ phase: 'asking', answered: round.asks.map((ask) => ask !== null) });
      }
    }
  });

  test('O1 who stopped is public once all votes are in', () => {
    const start = playOn(opened('stop'), stream('stop', 'p'), (round) => round.phase === 'voting');
    const end = SEATS.reduce(
      (now, seat) => apply(now, { kind: 'vote', step: 'vote', go: seat !== 2, seat, by: 'player' }),
      start,
    );
    const seen = viewFor(end.round, { kind: 'spectator' });
    expect(seen.audience === 'spectator' && seen.steps.at(-1)).toMatchObject({
      go: [true, true, false, true],
    });
  });

  test('V3 no view carries anything that tells two tiles of one face apart', () => {
    for (const round of everyStage('faces')) {
      for (const tile of seatView(round, 3).rack) expect(FACES).toContain(tile);
    }
  });
});

describe('a spectator', () => {
  test('V2 a spectator sees no tile at any time', () => {
    for (const round of everyStage('watch')) {
      expect([...facesIn(viewFor(round, { kind: 'spectator' }))]).toEqual([]);
    }
  });

  test('V2 the search of these tests for tiles finds those of a seat’s view', () => {
    const [round] = everyStage('watch');
    expect(facesIn(seatView(round!, 0))).toEqual(new Set(facesOf(round!.racks[0])));
  });
});

describe('after the close', () => {
  test('Z2 all racks are revealed after the close only where the terms say so', () => {
    for (const revealRacks of [true, false]) {
      const round = everyStage('open', revealRacks).at(-1)!;
      const { stage, terms } = viewFor(round, { kind: 'spectator' });
      expect(terms.revealRacks).toBe(revealRacks);
      expect(stage.phase === 'closed' && stage.racks).toEqual(revealRacks ? round.racks.map(facesOf) : null);
    }
  });

  test('Z1 Z2 D4 the seed is revealed at the close where racks are, and to nobody before or elsewhere', () => {
    for (const revealRacks of [true, false]) {
      const rounds = everyStage('seed', revealRacks);
      const { seed } = rounds[0]!.deal;
      for (const round of rounds) {
        const views = [viewFor(round, { kind: 'spectator' }), seatView(round, 2)];
        const shown = views.map((view) => JSON.stringify(view).includes(seed));
        const open = revealRacks && round.phase === 'closed';
        expect(shown).toEqual([open, open]);
      }
    }
  });

  test('K2 every step says whether a player, a bot or a stand-in chose', () => {
    const random = stream('who', 'p');
    let now = opened('who');
    for (const seat of SEATS) {
      const by = (['player', 'bot', 'stand-in', 'player'] as const)[seat]!;
      now = apply(now, { ...anyChoice(now.round, seat, random), seat, by });
    }
    const seen = viewFor(now.round, { kind: 'spectator' });
    expect(seen.audience === 'spectator' && seen.steps[0]?.by).toEqual([
      'player',
      'bot',
      'stand-in',
      'player',
    ]);
  });
});
