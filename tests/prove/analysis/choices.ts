// Choices to judge: everything that seats of different styles decided in rounds of the house card.
import {
  begin,
  chooseFor,
  createAnalyst,
  houseCard,
  loadVectors,
  openRound,
  playOut,
  type Question,
  questionsIn,
  type Round,
  SEATS,
} from '../../../shared-engine/index.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import { seedNamed } from '../../kit/rounds.ts';

export const card = houseCard();
export const vectors = await loadVectors();
export const analyst = createAnalyst(card, vectors);

/** `count` choices from as many rounds as it takes; each record gives all of its own. */
export function choicesFrom(seed: string, count: number): readonly Question[] {
  const questions: Question[] = [];
  for (let n = 0; questions.length < count; n += 4) {
    for (const record of records(`${seed} choices ${n}`, 4)) questions.push(...questionsIn(record));
  }
  return questions.slice(0, count);
}

/** A closed round of four strong bots; the dealer changes from deal to deal. */
export function strongRound(name: string, deal: number): Round {
  const dealt = openRound({ seed: seedNamed(name), dealer: SEATS[deal % 4]! }, { layOpen: false });
  return playOut(begin(dealt), (view, random) => chooseFor('strong', view, houseKernel, random)).round;
}
