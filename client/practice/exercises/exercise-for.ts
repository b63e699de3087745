// From a choice that is due to the question: the rack, what was known then, and the card it is judged by.
import {
  type CompiledCard,
  compileCard,
  type Exercise,
  exerciseAt,
  unpackPlay,
} from '../../../shared-engine/index.ts';
import { readRound } from '../../storage/history/rounds.ts';
import type { Due } from './queue.ts';

/** Null where the round or its card is not stored any more. */
export async function exerciseFor({
  exercise: { round, step },
}: Due): Promise<{ readonly exercise: Exercise; readonly card: CompiledCard } | null> {
  const read = await readRound(round);
  if (!read.ok || !read.value?.card) return null;
  const play = unpackPlay(read.value.round.detail.play);
  const exercise = play && exerciseAt(play.record, step);
  return exercise && { exercise, card: compileCard(read.value.card.file) };
}
