// A question that a player leaves for the teacher at a step; it goes with the round.
import { useSignal } from '@preact/signals';
import { isQuestion, PUBLISHED_LIMITS, type SendRound, type Step } from '../../../shared-engine/index.ts';
import { stepInSentence } from '../model/strings.ts';
import { QuestionField } from './question-field.tsx';
import { DRILL } from './strings.ts';

interface QuestionFormProps {
  readonly step: Step;
  readonly asked: SendRound['questions'];
  readonly onAsk: (question: SendRound['questions'][number]) => void;
}

export function QuestionForm({ step, asked, onAsk }: QuestionFormProps) {
  const text = useSignal('');
  const problem = useSignal<string | null>(null);
  const isFull = asked.length >= PUBLISHED_LIMITS.questionsPerRound;

  function leave() {
    const said = text.value.trim();
    if (said === '') return;
    problem.value = isQuestion(said) ? null : DRILL.notVisible;
    if (problem.value !== null) return;
    onAsk({ step, text: said });
    text.value = '';
  }

  return (
    <details class="published-question">
      <summary>{DRILL.ask}</summary>
      <p class="aside">{isFull ? DRILL.most : DRILL.askAbout}</p>
      {!isFull && (
        <div class="field">
          <QuestionField
            id="published-question"
            label={DRILL.question(stepInSentence(step))}
            value={text.value}
            problem={problem.value}
            onText={(next) => {
              text.value = next;
            }}
          />
          <button type="button" onClick={leave}>
            {DRILL.leave}
          </button>
        </div>
      )}
      <p role="status">{asked.length > 0 && DRILL.left(asked.length)}</p>
    </details>
  );
}
