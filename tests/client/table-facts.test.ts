// What the drawing of the table shows, held against the engine's whole round, which no page ever sees.
import { expect, test } from 'vitest';
import { rackMoments } from '../../client/review/rack-moments.ts';
import { placeOf } from '../../client/room/seat-names.ts';
import { lastMoved, revealedBy, tileCountsOf } from '../../client/table/table-facts.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, neighbor, SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type SpectatorView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn } from '../kit/rounds.ts';

/** Every state of 24 rounds, one command apart, with what a spectator sees of it. */
function* statesOfRounds(): Generator<readonly [Round, SpectatorView]> {
  const random = stream('drawing', 'choices');
  for (let n = 0; n < 24; n++) {
    let played = opened(`drawing ${n}`, SEATS[n % 4]);
    for (;;) {
      const view = viewFor(played.round, { kind: 'spectator' });
      if (view.audience === 'spectator') yield [played.round, view];
      if (played.round.phase === 'closed') break;
      const { round } = played;
      played = playOn(played, random, (now) => now !== round);
    }
  }
}

test('a seat is drawn with thirteen tiles or fourteen, those of its pass in front of it, and never with how many are blind', () => {
  let out = 0;
  for (const [round, { stage, dealer }] of statesOfRounds()) {
    for (const seat of SEATS) {
      const drawn = tileCountsOf(stage, dealer, seat);
      expect(drawn.rack + drawn.out).toBe(seat === dealer ? 14 : 13);
      const pass = round.phase === 'passing' || round.phase === 'giving' ? round.submitted[seat] : null;
      expect(drawn.out).toBe(pass ? pass.tiles.length + pass.blind : 0);
      out += drawn.out;
    }
  }
  expect(out).toBeGreaterThan(500);
});

test('B4 the tiles drawn on their way are as many as each seat passed, also where all four pass blind', () => {
  let courtesies = 0;
  for (const [round, { steps }] of statesOfRounds()) {
    const last = round.resolved.at(-1);
    const moved = lastMoved(steps);
    if (last?.kind !== 'move') {
      expect(moved).toBeNull();
      continue;
    }
    expect(moved?.counts).toEqual(forFour((seat) => last.gave[seat].length + last.forwarded[seat].length));
    if (last.step === 'courtesy-pass') courtesies++;
  }
  expect(courtesies).toBeGreaterThan(5);
});

test('votes and courtesy numbers lie open until the next step is over', () => {
  const seen = new Set<string>();
  for (const [round, { steps }] of statesOfRounds()) {
    const last = round.resolved.at(-1);
    const shown = last?.kind === 'vote' ? last.go : last?.kind === 'ask' ? last.asked : null;
    expect(revealedBy(steps)).toEqual(shown);
    seen.add(last?.kind ?? 'none');
  }
  expect(seen).toEqual(new Set(['none', 'move', 'vote', 'ask']));
});

test('the seat on the right is drawn on the right, whoever looks', () => {
  for (const you of SEATS) {
    expect(placeOf(you, you)).toBe('below');
    expect(placeOf(neighbor(you, 'right'), you)).toBe('right');
    expect(placeOf(neighbor(you, 'across'), you)).toBe('above');
    expect(placeOf(neighbor(you, 'left'), you)).toBe('left');
  }
});

test('Z2 walked through backward from its end, an open round begins with the racks that were dealt', () => {
  const random = stream('walks', 'choices');
  for (let n = 0; n < 24; n++) {
    const first = opened(`walk ${n}`, SEATS[n % 4], true);
    const closed = viewFor(playOn(first, random).round, { kind: 'spectator' }).stage;
    if (closed.phase !== 'closed' || closed.racks === null || closed.opened === null)
      throw new Error('not open');
    const moments = rackMoments(closed.opened.moves, closed.racks);
    expect(moments.map(({ move }) => move?.step)).toEqual([
      ...closed.opened.moves.map(({ step }) => step),
      undefined,
    ]);
    for (const seat of SEATS) {
      expect(moments[0]!.racks[seat]).toEqual(facesOf(first.round.racks[seat]));
      expect(moments.map(({ racks }) => racks[seat].length)).toEqual(
        moments.map(() => sizeOf(first.round.racks[seat])),
      );
    }
  }
});
