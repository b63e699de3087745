// One play from the racks after the exchange to a completed line or the end of the wall.
import type { Random } from '../../rules/deal/random.ts';
import { shuffled } from '../../rules/deal/random.ts';
import { forFour, type Seat } from '../../rules/deal/seat.ts';
import { FACE_COUNT, type Four } from '../../rules/tiles/face.ts';
import { createJudge, type Judge } from './judge.ts';
import { completedLine } from './legality.ts';
import type { OfferMove, TurnMove } from './move.ts';
import { afterOffer, afterTurn, bagWith } from './move.ts';
import {
  callersAfter,
  type Offer,
  openPlay,
  type Play,
  type PlayOver,
  type PlayStart,
  type Turn,
} from './play.ts';
import type { PlayCard } from './play-card.ts';
import { sightOf } from './player-view.ts';
import { chooseAnswer, chooseDiscard, chooseExchange } from './policy.ts';

export interface Players {
  answerTurn(play: Turn): TurnMove;
  answerOffer(play: Offer): OfferMove;
}

/**
 * The four simulated seats of one play. `random` gives each an order of its own in which idle tiles go; it is
 * asked here and never again.
 */
export function createPlayers(card: PlayCard, judges: Four<Judge>, random: Random): Players {
  const orders = forFour(() =>
    shuffled(
      Array.from({ length: FACE_COUNT }, (_, face) => face),
      random,
    ),
  );
  return {
    answerTurn(play) {
      const { seat } = play;
      const sight = sightOf(play, seat);
      const judge = judges[seat];
      if (judge.toGo(sight.hand) === 0) return { kind: 'finish', line: completedLine(card, sight.hand)! };
      const exchange = chooseExchange(judge, sight);
      if (exchange !== null) return { kind: 'exchange', ...exchange };
      return { kind: 'discard', face: chooseDiscard(judge, sight, orders[seat]) };
    },
    answerOffer(play) {
      let call: OfferMove = { kind: 'pass' };
      for (const seat of callersAfter(play.from)) {
        const sight = sightOf(play, seat);
        const answer = chooseAnswer(card, judges[seat], sight, play.face);
        if (answer === 'completes') {
          const { concealed, exposed } = sight.hand;
          const hand = { concealed: bagWith(concealed, play.face, 1), exposed };
          return { kind: 'finish', seat, line: completedLine(card, hand)! };
        }
        if (answer !== null && call.kind === 'pass') call = { kind: 'expose', seat, size: answer };
      }
      return call;
    },
  };
}

export function step(play: Turn | Offer, players: Players): Play {
  return play.phase === 'turn'
    ? afterTurn(play, players.answerTurn(play))
    : afterOffer(play, players.answerOffer(play));
}

export interface PlayResult {
  /** Null after a wall game. */
  readonly winner: Seat | null;
  /** Index into the lines of the card; null after a wall game. */
  readonly line: number | null;
  /** Discards made. */
  readonly turns: number;
  /** Tiles never drawn. */
  readonly wallLeft: number;
}

/** Simulates plays on one card; the judges it keeps are caches and change no result. */
export function createSimulator(card: PlayCard): (start: PlayStart, random: Random) => PlayResult {
  const judges = forFour(() => createJudge(card));
  return (start, random) => {
    const players = createPlayers(card, judges, random);
    let play: Play = openPlay(start);
    while (play.phase !== 'over') play = step(play, players);
    return resultOf(play);
  };
}

function resultOf({ winner, line, turns, wall, drawn }: PlayOver): PlayResult {
  return { winner, line, turns, wallLeft: wall.length - drawn };
}
