// What holds in every simulated play: no tile lost, every move legal, nothing hidden used, always an end.
import { describe, expect, test } from 'vitest';
import {
  chooseCall,
  chooseDiscard,
  chooseJokerExchange,
} from '../../shared-engine/analysis/play/choose-move.ts';
import { createDanger, NO_DANGER } from '../../shared-engine/analysis/play/danger.ts';
import { createEvaluator } from '../../shared-engine/analysis/play/evaluator.ts';
import { offerObjection, turnObjection } from '../../shared-engine/analysis/play/legality.ts';
import { afterOffer, afterTurn } from '../../shared-engine/analysis/play/move.ts';
import {
  type Offer,
  openPlay,
  type SimulatedPlay,
  type Turn,
} from '../../shared-engine/analysis/play/play.ts';
import { preparePlayCard } from '../../shared-engine/analysis/play/play-card.ts';
import { playerView } from '../../shared-engine/analysis/play/player-view.ts';
import { createPlayers, createSimulator } from '../../shared-engine/analysis/play/simulate.ts';
import type { CompiledCard } from '../../shared-engine/card/compiled.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { shuffled, stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { addTo, bagOf, FULL_SET, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT } from '../../shared-engine/rules/tiles/face.ts';
import { tilesIn } from '../kit/play-positions.ts';
import { randomCard } from '../kit/random-card.ts';
import { seedNamed } from '../kit/rounds.ts';

const CARDS: readonly CompiledCard[] = [houseCard(), randomCard('play', 30, 20)];
const PLAY_CARDS = CARDS.map(preparePlayCard);

function startOf(name: string) {
  const dealer = SEATS[name.length % 4]!;
  return { ...dealTiles({ seed: seedNamed(name), dealer }), dealer };
}

/** Every position of one play, in order. */
function positions(name: string, card = PLAY_CARDS[0]!): SimulatedPlay[] {
  const players = createPlayers(
    card,
    forFour(() => createEvaluator(card)),
    createDanger(card),
    stream(name, 'play'),
  );
  const seen: SimulatedPlay[] = [openPlay(startOf(name))];
  for (let play = seen[0]!; play.phase !== 'over'; seen.push(play)) {
    if (play.phase === 'turn') {
      const move = players.takeTurn(play);
      expect(turnObjection(card, play, move)).toBeNull();
      play = afterTurn(play, move);
    } else {
      const move = players.answerDiscard(play);
      expect(offerObjection(card, play, move)).toBeNull();
      play = afterOffer(play, move);
    }
  }
  return seen;
}

function tilesHeld(play: SimulatedPlay, seat: Seat): number {
  const { concealed, exposed } = play.holdings[seat];
  return concealed.reduce((sum, count) => sum + count, 0) + exposed.reduce((sum, { size }) => sum + size, 0);
}

describe.each(PLAY_CARDS.map((card) => ({ name: card.card.name, card })))('on $name', ({ card }) => {
  test('S1 at every turn of a play the 152 tiles are all there, and every move is legal', () => {
    for (let n = 0; n < 20; n++) {
      for (const play of positions(`whole ${n}`, card)) expect(tilesIn(play)).toEqual(FULL_SET);
    }
  });

  test('a seat holds 14 tiles on its turn and 13 otherwise', () => {
    for (let n = 0; n < 10; n++) {
      for (const play of positions(`sizes ${n}`, card)) {
        const own = play.phase === 'turn' ? play.seat : play.phase === 'over' ? play.winner : null;
        expect(SEATS.map((seat) => tilesHeld(play, seat))).toEqual(
          SEATS.map((seat) => (seat === own ? 14 : 13)),
        );
      }
    }
  });

  test('P9 a play ends when a hand is complete or the wall is empty', () => {
    for (let n = 0; n < 20; n++) {
      const last = positions(`end ${n}`, card).at(-1)!;
      if (last.phase !== 'over') throw new Error('the play goes on');
      if (last.winner === null) expect(last.drawn).toBe(last.wall.length);
      else expect(last.pattern).not.toBeNull();
    }
  });
});

test('P6 the winner holds a hand of the pattern, exposed groups included, by definition', () => {
  let exposedGroups = 0;
  for (let n = 0; n < 20; n++) {
    const last = positions(`winner ${n}`).at(-1)!;
    if (last.phase !== 'over' || last.winner === null) continue;
    const { concealed, exposed } = last.holdings[last.winner];
    const rack = [...concealed];
    for (const { face, size } of exposed) rack[face]! += size;
    const hands = CARDS[0]!.hands.filter((hand) => hand.pattern === last.pattern);
    expect(Math.min(...hands.map((hand) => tilesToGo(hand, rack)))).toBe(0);
    exposedGroups += exposed.length;
  }
  expect(exposedGroups).toBeGreaterThan(10);
});

test('tiles to go without exposed groups are those of the definition', () => {
  const evaluator = createEvaluator(PLAY_CARDS[0]!);
  for (let n = 0; n < 200; n++) {
    const rack = bagOf(shuffled(facesOf(FULL_SET), stream(`closed ${n}`, 'rack')).slice(0, 13 + (n % 2)));
    const least = Math.min(...CARDS[0]!.hands.map((hand) => tilesToGo(hand, rack)));
    expect(evaluator.toGo({ concealed: rack, exposed: [] })).toBe(least);
  }
});

test('the same racks, wall and seed give the same play, whatever was simulated before', () => {
  const fresh = createSimulator(PLAY_CARDS[0]!);
  const used = createSimulator(PLAY_CARDS[0]!);
  for (let n = 0; n < 10; n++) used(startOf(`warm ${n}`), stream(`warm ${n}`, 'play'));
  for (let n = 0; n < 10; n++) {
    const name = `again ${n}`;
    expect(used(startOf(name), stream(name, 'play'))).toEqual(fresh(startOf(name), stream(name, 'play')));
  }
});

test('in a race some plays end otherwise, because discards do not look at what lies open', () => {
  const [watchful, race] = [createSimulator(PLAY_CARDS[0]!), createSimulator(PLAY_CARDS[0]!, NO_DANGER)];
  const names = Array.from({ length: 20 }, (_, n) => `race ${n}`);
  const others = names.filter((name) => {
    const [here, there] = [watchful, race].map((simulate) => simulate(startOf(name), stream(name, 'play')));
    return JSON.stringify(here) !== JSON.stringify(there);
  });
  expect(others.length).toBeGreaterThan(0);
  expect(others.length).toBeLessThan(names.length);
});

/** The same position with everything that `seat` cannot see dealt anew: the other racks and the wall. */
function hiddenTilesSwapped<T extends Turn | Offer>(play: T, seat: Seat, name: string): T {
  const left = play.wall.slice(play.drawn);
  const others = SEATS.filter((other) => other !== seat);
  const hidden = shuffled(
    [
      ...left,
      ...others.flatMap((other) =>
        play.holdings[other].concealed.flatMap((count, face) => new Array<number>(count).fill(face)),
      ),
    ],
    stream(name, 'swap'),
  );
  const holdings = forFour((other) => {
    if (other === seat) return play.holdings[seat];
    const { concealed, exposed } = play.holdings[other];
    const counts = new Array<number>(FACE_COUNT).fill(0);
    for (const face of hidden.splice(
      0,
      concealed.reduce((sum, count) => sum + count, 0),
    ))
      counts[face]!++;
    return { concealed: counts, exposed };
  });
  return { ...play, holdings, wall: [...play.wall.slice(0, play.drawn), ...hidden] };
}

test('V1 a seat decides alike when the racks and the wall it cannot see are dealt anew', () => {
  const card = PLAY_CARDS[0]!;
  const evaluator = createEvaluator(card);
  const danger = createDanger(card);
  const order = Array.from({ length: FACE_COUNT }, (_, face) => face);
  let calls = 0;
  for (let n = 0; n < 6; n++) {
    for (const [at, play] of positions(`blind ${n}`).entries()) {
      if (play.phase === 'over') continue;
      const other = (seat: Seat) => hiddenTilesSwapped(play, seat, `${n} ${at} ${seat}`);
      if (play.phase === 'turn') {
        const [here, there] = [playerView(play, play.seat), playerView(other(play.seat), play.seat)];
        expect(chooseDiscard(evaluator, danger, there, order)).toBe(
          chooseDiscard(evaluator, danger, here, order),
        );
        expect(chooseJokerExchange(evaluator, there)).toEqual(chooseJokerExchange(evaluator, here));
        continue;
      }
      for (const seat of SEATS.filter((seat) => seat !== play.from)) {
        const [here, there] = [playerView(play, seat), playerView(other(seat), seat)];
        const answer = chooseCall(card, evaluator, here, play.face);
        expect(chooseCall(card, evaluator, there, play.face)).toEqual(answer);
        if (answer !== null) calls++;
      }
    }
  }
  expect(calls).toBeGreaterThan(10);
});

test('a rack with eleven tiles of a hand wins more plays than three random racks together', () => {
  const simulate = createSimulator(PLAY_CARDS[0]!);
  const hand = CARDS[0]!.hands.find(({ pattern }) => !CARDS[0]!.patterns[pattern]!.concealed)!;
  const near = facesOf(hand.singles.map((count, face) => count + hand.groups[face]!)).slice(0, 11);
  const wins = [0, 0];
  for (let n = 0; n < 40; n++) {
    const rest = takeFrom(FULL_SET, near)!;
    const tiles = shuffled(facesOf(rest), stream(`near ${n}`, 'tiles'));
    const racks = forFour((seat) =>
      seat === 0 ? addTo(bagOf(near), tiles.splice(0, 2)) : bagOf(tiles.splice(0, seat === 1 ? 14 : 13)),
    );
    const { winner } = simulate({ racks, wall: tiles, dealer: 1 }, stream(`near ${n}`, 'play'));
    if (winner !== null) wins[winner === 0 ? 0 : 1]!++;
  }
  expect(wins[0]).toBeGreaterThan(wins[1]!);
});
