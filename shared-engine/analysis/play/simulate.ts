// One play from the racks after the exchange to a completed hand or the end of the wall.
import { FACE_COUNT, type Four, forFour, type Random, type Seat, shuffled } from '../../rules/index.ts';
import { chooseCall, chooseDiscard, chooseJokerExchange } from './choose-move.ts';
import { createDanger, type Danger } from './danger.ts';
import { createEvaluator, type Evaluator } from './evaluator.ts';
import { completedPattern } from './legality.ts';
import { afterOffer, afterTurn, bagWith, type OfferMove, type TurnMove } from './move.ts';
import {
  callersAfter,
  type Offer,
  openPlay,
  type PlayOver,
  type PlayStart,
  type SimulatedPlay,
  type Turn,
} from './play.ts';
import type { PlayCard } from './play-card.ts';
import { playerView } from './player-view.ts';

export interface Players {
  takeTurn(play: Turn): TurnMove;
  answerDiscard(play: Offer): OfferMove;
}

/**
 * The four simulated seats of one play. `random` gives each an order of its own in which it discards tiles without
 * use; it is asked here and never again.
 */
export function createPlayers(
  card: PlayCard,
  evaluators: Four<Evaluator>,
  danger: Danger,
  random: Random,
): Players {
  const orders = forFour(() =>
    shuffled(
      Array.from({ length: FACE_COUNT }, (_, face) => face),
      random,
    ),
  );
  return {
    takeTurn(play) {
      const { seat } = play;
      const view = playerView(play, seat);
      const evaluator = evaluators[seat];
      if (evaluator.toGo(view.holding) === 0) {
        return { kind: 'finish', pattern: completedPattern(card, view.holding)! };
      }
      const exchange = chooseJokerExchange(evaluator, view);
      if (exchange !== null) return { kind: 'exchange-joker', ...exchange };
      return { kind: 'discard', face: chooseDiscard(evaluator, danger, view, orders[seat]) };
    },
    answerDiscard(play) {
      let move: OfferMove = { kind: 'no-call' };
      for (const seat of callersAfter(play.from)) {
        const view = playerView(play, seat);
        const call = chooseCall(card, evaluators[seat], view, play.face);
        if (call === 'completes') {
          const { concealed, exposed } = view.holding;
          const complete = { concealed: bagWith(concealed, play.face, 1), exposed };
          return { kind: 'finish', seat, pattern: completedPattern(card, complete)! };
        }
        if (call !== null && move.kind === 'no-call') move = { kind: 'expose', seat, size: call };
      }
      return move;
    },
  };
}

function nextPlay(play: Turn | Offer, players: Players): SimulatedPlay {
  return play.phase === 'turn'
    ? afterTurn(play, players.takeTurn(play))
    : afterOffer(play, players.answerDiscard(play));
}

export interface PlayResult {
  /** Null after a wall game. */
  readonly winner: Seat | null;
  /** Index into the patterns of the card; null after a wall game. */
  readonly pattern: number | null;
  /** Discards made. */
  readonly turns: number;
  /** Tiles never drawn. */
  readonly wallLeft: number;
}

/**
 * Simulates plays on one card; its evaluators remember the last holding and change no result. `danger` is what the seats
 * see in what the others lay open.
 */
export function createSimulator(
  card: PlayCard,
  danger: Danger = createDanger(card),
): (start: PlayStart, random: Random) => PlayResult {
  const evaluators = forFour(() => createEvaluator(card));
  return (start, random) => {
    const players = createPlayers(card, evaluators, danger, random);
    let play: SimulatedPlay = openPlay(start);
    while (play.phase !== 'over') play = nextPlay(play, players);
    return resultOf(play);
  };
}

function resultOf({ winner, pattern, turns, wall, drawn }: PlayOver): PlayResult {
  return { winner, pattern, turns, wallLeft: wall.length - drawn };
}
