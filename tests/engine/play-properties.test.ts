// What holds in every simulated play: no tile lost, every move legal, nothing hidden used, always an end.
import { describe, expect, test } from 'vitest';
import {
  addTo,
  afterOffer,
  afterTurn,
  bagOf,
  type CompiledCard,
  chooseAnswer,
  chooseDiscard,
  chooseExchange,
  createJudge,
  createPlayers,
  createSimulator,
  dealTiles,
  FACE_COUNT,
  FULL_SET,
  facesOf,
  forFour,
  houseCard,
  type Offer,
  offerObjection,
  openPlay,
  type Play,
  preparePlayCard,
  SEATS,
  type Seat,
  shuffled,
  sightOf,
  stream,
  type Turn,
  takeFrom,
  tilesToGo,
  turnObjection,
} from '../../shared-engine/index.ts';
import { oddCard } from '../kit/random-card.ts';
import { tilesIn } from '../kit/play-positions.ts';
import { seedNamed } from '../kit/rounds.ts';

const CARDS: readonly CompiledCard[] = [houseCard(), oddCard('play', 30, 20)];
const PLAY_CARDS = CARDS.map(preparePlayCard);

function startOf(name: string) {
  const dealer = SEATS[name.length % 4]!;
  return { ...dealTiles({ seed: seedNamed(name), dealer }), dealer };
}

/** Every position of one play, in order. */
function positions(name: string, card = PLAY_CARDS[0]!): Play[] {
  const players = createPlayers(
    card,
    forFour(() => createJudge(card)),
    stream(name, 'play'),
  );
  const seen: Play[] = [openPlay(startOf(name))];
  for (let play = seen[0]!; play.phase !== 'over'; seen.push(play)) {
    if (play.phase === 'turn') {
      const move = players.answerTurn(play);
      expect(turnObjection(card, play, move)).toBeNull();
      play = afterTurn(play, move);
    } else {
      const move = players.answerOffer(play);
      expect(offerObjection(card, play, move)).toBeNull();
      play = afterOffer(play, move);
    }
  }
  return seen;
}

function tilesHeld(play: Play, seat: Seat): number {
  const { concealed, exposed } = play.hands[seat];
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

  test('P9 a play ends: a line is complete, or the wall is empty', () => {
    for (let n = 0; n < 20; n++) {
      const last = positions(`end ${n}`, card).at(-1)!;
      if (last.phase !== 'over') throw new Error('the play goes on');
      if (last.winner === null) expect(last.drawn).toBe(last.wall.length);
      else expect(last.line).not.toBeNull();
    }
  });
});

test('P6 the winner holds a target of the line, open groups and all, by the plain count', () => {
  let open = 0;
  for (let n = 0; n < 20; n++) {
    const last = positions(`winner ${n}`).at(-1)!;
    if (last.phase !== 'over' || last.winner === null) continue;
    const { concealed, exposed } = last.hands[last.winner];
    const rack = [...concealed];
    for (const { face, size } of exposed) rack[face]! += size;
    const targets = CARDS[0]!.targets.filter((target) => target.line === last.line);
    expect(Math.min(...targets.map((target) => tilesToGo(target, rack)))).toBe(0);
    open += exposed.length;
  }
  expect(open).toBeGreaterThan(10);
});

test('the distance of a closed hand is the one that the plain kernel counts', () => {
  const judge = createJudge(PLAY_CARDS[0]!);
  for (let n = 0; n < 200; n++) {
    const rack = bagOf(shuffled(facesOf(FULL_SET), stream(`closed ${n}`, 'rack')).slice(0, 13 + (n % 2)));
    const plain = Math.min(...CARDS[0]!.targets.map((target) => tilesToGo(target, rack)));
    expect(judge.toGo({ concealed: rack, exposed: [] })).toBe(plain);
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

/** The same position with everything that `seat` cannot see dealt anew: the other racks and the wall. */
function hiddenTilesSwapped<T extends Turn | Offer>(play: T, seat: Seat, name: string): T {
  const left = play.wall.slice(play.drawn);
  const others = SEATS.filter((other) => other !== seat);
  const hidden = shuffled(
    [
      ...left,
      ...others.flatMap((other) =>
        play.hands[other].concealed.flatMap((count, face) => new Array<number>(count).fill(face)),
      ),
    ],
    stream(name, 'swap'),
  );
  const hands = forFour((other) => {
    if (other === seat) return play.hands[seat];
    const { concealed, exposed } = play.hands[other];
    const counts = new Array<number>(FACE_COUNT).fill(0);
    for (const face of hidden.splice(
      0,
      concealed.reduce((sum, count) => sum + count, 0),
    ))
      counts[face]!++;
    return { concealed: counts, exposed };
  });
  return { ...play, hands, wall: [...play.wall.slice(0, play.drawn), ...hidden] };
}

test('V1 a seat decides alike when the racks and the wall it cannot see are dealt anew', () => {
  const card = PLAY_CARDS[0]!;
  const judge = createJudge(card);
  const order = Array.from({ length: FACE_COUNT }, (_, face) => face);
  let calls = 0;
  for (let n = 0; n < 6; n++) {
    for (const [at, play] of positions(`blind ${n}`).entries()) {
      if (play.phase === 'over') continue;
      const other = (seat: Seat) => hiddenTilesSwapped(play, seat, `${n} ${at} ${seat}`);
      if (play.phase === 'turn') {
        const [here, there] = [sightOf(play, play.seat), sightOf(other(play.seat), play.seat)];
        expect(chooseDiscard(judge, there, order)).toBe(chooseDiscard(judge, here, order));
        expect(chooseExchange(judge, there)).toEqual(chooseExchange(judge, here));
        continue;
      }
      for (const seat of SEATS.filter((seat) => seat !== play.from)) {
        const [here, there] = [sightOf(play, seat), sightOf(other(seat), seat)];
        const answer = chooseAnswer(card, judge, here, play.face);
        expect(chooseAnswer(card, judge, there, play.face)).toEqual(answer);
        if (answer !== null) calls++;
      }
    }
  }
  expect(calls).toBeGreaterThan(10);
});

test('a rack that begins eleven tiles of a line beats three racks of strangers together', () => {
  const simulate = createSimulator(PLAY_CARDS[0]!);
  const target = CARDS[0]!.targets.find(({ line }) => !CARDS[0]!.lines[line]!.concealed)!;
  const near = facesOf(target.singles.map((count, face) => count + target.groups[face]!)).slice(0, 11);
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
