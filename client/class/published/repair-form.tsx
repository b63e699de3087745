// A round that the server will count once its player has changed the name or a question: changed here, and sent again.
import { useSignal } from '@preact/signals';
import { isQuestion } from '../../../shared-engine/index.ts';
import type { PlayedRound } from '../../storage/published.ts';
import { stepInSentence } from '../model/strings.ts';
import { QuestionField } from './question-field.tsx';
import { repairOf } from './rounds.ts';
import { DRILL } from './strings.ts';

interface RepairFormProps {
  readonly deal: string;
  readonly round: PlayedRound;
  readonly onSend: (questions: PlayedRound['questions']) => void;
}

/** The name is changed in its own field, which stands above the deals. */
export function RepairForm({ deal, round, onSend }: RepairFormProps) {
  const questions = useSignal(round.questions);
  const isTried = useSignal(false);

  function change(nth: number, text: string) {
    questions.value = questions.value.map((one, at) => (at === nth ? { ...one, text } : one));
  }
  function send() {
    isTried.value = true;
    if (questions.value.some(({ text }) => isNotVisible(text))) return;
    const left = questions.value.map((one) => ({ ...one, text: one.text.trim() }));
    onSend(left.filter(({ text }) => text !== ''));
  }

  return (
    <div class="published-repair">
      {repairOf(round) === 'bad-question' &&
        questions.value.map(({ step, text }, nth) => (
          <div class="field" key={nth}>
            <QuestionField
              id={`repair-${deal}-${nth}`}
              label={DRILL.question(stepInSentence(step))}
              value={text}
              problem={isTried.value && isNotVisible(text) ? DRILL.notVisible : null}
              onText={(next) => change(nth, next)}
            />
          </div>
        ))}
      {repairOf(round) === 'bad-question' && <p class="aside">{DRILL.emptied}</p>}
      <button type="button" class="primary" onClick={send}>
        {DRILL.send}
      </button>
    </div>
  );
}

/** One that is emptied is not sent. */
function isNotVisible(text: string): boolean {
  return text.trim() !== '' && !isQuestion(text.trim());
}
