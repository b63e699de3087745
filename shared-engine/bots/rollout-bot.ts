// Chooses by playing what could be chosen on to the close, in worlds that the seat cannot rule out.
import { choiceOffered } from '../analysis/belief/situation.ts';
import {
  type Alternative,
  asks,
  blindNumbers,
  passesOf,
  votes,
} from '../analysis/comparison/alternatives.ts';
import type { Analyst } from '../analysis/comparison/analyse.ts';
import { createWorldSource } from '../analysis/comparison/sampled-deals.ts';
import { screen } from '../analysis/comparison/screen.ts';
import { type PlayingOn, STYLE_DATA, type StyleName } from '../policy/styles.ts';
import type { AnswerChoice } from '../rules/exchange/command.ts';
import { MOVES, PASS_SIZE } from '../rules/exchange/schedule.ts';
import { sortFaces } from '../rules/tiles/bag.ts';
import { FACES } from '../rules/tiles/face.ts';
import type { SeatRecord } from '../rules/view/record.ts';
import type { Question } from './question.ts';

/** The worlds of one choice are drawn from one of so many seeds. */
export const PLAYING_ON_SEEDS = 0x8000_0000;

/** Whether a style takes its time: its choices are work for another thread than the one that serves tables. */
export function playsOn(style: StyleName): boolean {
  return STYLE_DATA[style].kind === 'playing-on';
}

/** The same record, analyst and seed (a whole number below `PLAYING_ON_SEEDS`) give the same choice, however long it takes. */
export function playedOn(
  question: Question,
  record: SeatRecord,
  { leaf, belief, playouts }: Analyst,
  style: PlayingOn,
  seed: number,
): AnswerChoice {
  // The answer is a stand-in: the situation is what was known before it.
  const { situation } = choiceOffered(record, answerWith(question, { tiles: [], number: 0 }), 'bot');
  const alternatives = alternativesOf();
  const [first] = alternatives;
  if (!first) throw new RangeError('There is nothing to choose from.');
  if (alternatives.length === 1) return answerWith(question, first);
  const source = createWorldSource(belief, playouts, situation, seed);
  const { finalists } = screen(source, situation.seat, alternatives, first, { ...style, looks: [] });
  return answerWith(question, finalists[0]!);

  function alternativesOf(): readonly Alternative[] {
    switch (question.kind) {
      case 'vote':
        return votes();
      case 'ask':
        return asks();
      case 'pass': {
        const known = passesOf(situation, question.needed, leaf).slice(0, style.field - PASS_SIZE);
        return MOVES[question.step].blind ? [...known, ...blindNumbers(situation, leaf).slice(1)] : known;
      }
    }
  }
}

function answerWith(question: Question, chosen: Pick<Alternative, 'tiles' | 'number'>): AnswerChoice {
  switch (question.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote', go: chosen.number === 1 };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: chosen.number ?? 0 };
    case 'pass': {
      const { step, needed } = question;
      const tiles = sortFaces(chosen.tiles.map((face) => FACES[face]!));
      return { kind: 'seal', step, tiles, blind: MOVES[step].blind ? needed - tiles.length : 0 };
    }
  }
}
