// Choices to judge: everything that seats of different styles decided in rounds of the house card.
import {
  createAnalyst,
  houseCard,
  loadVectors,
  type Question,
  questionsIn,
} from '../../../shared-engine/index.ts';
import { records } from '../../kit/reviews.ts';

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
