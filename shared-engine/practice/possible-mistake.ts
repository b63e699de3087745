// What a mistake of some kind takes, as far as the answer alone shows it: so that few answers need to be played on.
import { choiceOfMistake, type MistakeCategory } from '../analysis/index.ts';
import { riskGrade } from '../policy/index.ts';
import type { SeatView } from '../rules/index.ts';
import { type AnswerChoice, DRAGONS, type Face, mayPassBlind, WINDS } from '../rules/index.ts';

const HONORS: readonly Face[] = [...WINDS, ...DRAGONS];

/** Whether this answer could turn out to be a mistake of this kind. */
export function couldBe(kind: MistakeCategory, answer: AnswerChoice, { rack, terms }: SeatView): boolean {
  const wanted = choiceOfMistake(kind);
  switch (answer.kind) {
    case 'vote':
      return wanted === 'vote' && answer.go === (kind === 'continued');
    case 'ask':
      return wanted === 'ask' && (kind === 'asked-too-many' ? answer.count > 0 : answer.count < 3);
    case 'pass':
      if (wanted === 'pass') return answer.tiles.length > 0 && passCouldBe(kind, answer, rack);
      if (wanted !== 'blind' || !mayPassBlind(answer.step, terms)) return false;
      return kind === 'too-many-blind' ? answer.blind > 0 : answer.blind < 3;
  }
}

type Pass = Extract<AnswerChoice, { readonly kind: 'pass' }>;

function passCouldBe(kind: MistakeCategory, { tiles, step }: Pass, rack: readonly Face[]): boolean {
  switch (kind) {
    case 'new-multiple':
    case 'broken-multiple':
      return tiles.some((face) => held(rack, face) > 1);
    case 'pair-given':
      return riskGrade(tiles) === 'pair';
    case 'like-numbers-given':
      return riskGrade(tiles) === 'like-numbers';
    case 'same-suit-given':
      return riskGrade(tiles) === 'same-suit';
    case 'flower-given':
      return tiles.includes('flower');
    case 'lone-honor-kept':
      return rack.some((face) => HONORS.includes(face) && held(rack, face) === 1 && !tiles.includes(face));
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

function held(rack: readonly Face[], face: Face): number {
  return rack.filter((one) => one === face).length;
}
