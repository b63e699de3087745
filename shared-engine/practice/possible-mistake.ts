// What a mistake of some kind takes, as far as that is seen before a choice is played on: so that few need to be.
import {
  type ChoiceReview,
  choiceOfMistake,
  type MistakeCategory,
  type PassReview,
} from '../analysis/index.ts';
import { DRAGONS, type Face, WINDS } from '../rules/index.ts';

const HONORS: readonly Face[] = [...WINDS, ...DRAGONS];

/** Whether this choice could turn out to be a mistake of this kind. */
export function couldBe(kind: MistakeCategory, choice: ChoiceReview): boolean {
  if (choice.kind !== choiceOfMistake(kind)) return false;
  if (choice.kind === 'pass') return passCouldBe(kind, choice);
  switch (kind) {
    case 'too-many-blind':
    case 'asked-too-many':
    case 'continued':
      return choice.played > 0;
    case 'too-few-blind':
    case 'asked-too-few':
      return choice.played < 3;
    default:
      return choice.played === 0;
  }
}

function passCouldBe(kind: MistakeCategory, { parts, played, rack, step }: PassReview): boolean {
  switch (kind) {
    case 'new-multiple':
    case 'broken-multiple':
      return parts.broken.length > 0;
    case 'pair-given':
      return played.risk === 'pair';
    case 'like-numbers-given':
      return played.risk === 'like-numbers';
    case 'same-suit-given':
      return played.risk === 'same-suit';
    case 'flower-given':
      return played.tiles.includes('flower');
    case 'lone-honor-kept':
      return rack.some((face) => HONORS.includes(face) && !played.tiles.includes(face));
    case 'committed-too-soon':
      return step.startsWith('first');
    case 'committed-too-late':
      return !step.startsWith('first') && step !== 'second-left';
    case 'jokers-for-pairs':
      return rack.includes('joker');
    default:
      return true;
  }
}
