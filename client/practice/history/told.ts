// Keeps what was told of a round in this browser, so that its review is there at once when it is opened again.
import { countTold, type Review, toldText, withTold } from '../../../shared-engine/index.ts';
import { packText, unpackText } from '../../app/routes/packed-text.ts';
import { answersOf, storeAnswers } from '../../storage/history/rounds.ts';
import { JUDGE } from './round-of.ts';

/** Of a round that is stored here; what is kept already is replaced by as much or more. */
export async function keepTold(id: string, review: Review): Promise<void> {
  const count = countTold(review);
  if (count > 0) await storeAnswers({ id, judge: JUDGE, count, packed: await packText(toldText(review)) });
}

/** The review with all that was told of it here; what a browser cannot give, or another judge told, is worked out anew. */
export async function withKept(id: string, review: Review): Promise<Review> {
  const kept = await answersOf(id);
  if (!kept.ok || kept.value?.judge !== JUDGE) return review;
  const unpacked = await unpackText(kept.value.packed);
  return unpacked.ok ? withTold(review, unpacked.text) : review;
}
