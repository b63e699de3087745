// A round that the server will count once its player has changed the name or a question: changed here, and sent again.
import { useSignal } from '@preact/signals';
import { isQuestion, PUBLISHED_LIMITS } from '../../../shared-engine/index.ts';
import type { PlayedRound } from '../../storage/published.ts';
import { stepInSentence } from '../model/strings.ts';
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
  const problem = useSignal<string | null>(null);

  function change(nth: number, text: string) {
    questions.value = questions.value.map((one, at) => (at === nth ? { ...one, text } : one));
  }
  function send() {
    const left = questions.value
      .map((one) => ({ ...one, text: one.text.trim() }))
      .filter(({ text }) => text !== '');
    problem.value = left.every(({ text }) => isQuestion(text)) ? null : DRILL.unseen;
    if (problem.value === null) onSend(left);
  }

  return (
    <div class="published-repair">
      {repairOf(round) === 'bad-question' &&
        questions.value.map(({ step, text }, nth) => (
          <div class="field" key={nth}>
            <label for={`repair-${deal}-${nth}`}>{DRILL.question(stepInSentence(step))}</label>
            <textarea
              id={`repair-${deal}-${nth}`}
              rows={2}
              maxLength={PUBLISHED_LIMITS.letters}
              value={text}
              onInput={(event) => change(nth, event.currentTarget.value)}
            />
          </div>
        ))}
      {repairOf(round) === 'bad-question' && <p class="aside">{DRILL.emptied}</p>}
      <p class="notice" role="alert">
        {problem.value}
      </p>
      <button type="button" class="primary" onClick={send}>
        {DRILL.send}
      </button>
    </div>
  );
}
