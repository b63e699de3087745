// What a step asks of a seat: tiles to pass, perhaps some of them blind, a vote, or a number.
import { useSignal } from '@preact/signals';
import {
  type AnswerChoice,
  bagOf,
  type Face,
  type PendingDecision,
  passObjection,
} from '../../../shared-engine/index.ts';
import { chooseMore, optionName } from '../../room/step-names.ts';
import { RackPicker } from '../../tiles/rack-picker.tsx';
import { Numbers } from './numbers.tsx';
import { QUESTION } from './strings.ts';

interface DecisionFormProps {
  readonly rack: readonly Face[];
  readonly decision: PendingDecision;
  readonly onAnswer: (choice: AnswerChoice) => void;
  /** Where a pass may be judged before it is made. */
  readonly onCompare?: (choice: AnswerChoice) => void;
}

export function DecisionForm({ rack, decision, ...answers }: DecisionFormProps) {
  switch (decision.kind) {
    case 'pass':
      return <PassForm rack={rack} decision={decision} {...answers} />;
    case 'vote':
      return (
        <Options
          values={[1, 0]}
          label={(value) => optionName('vote', value)}
          onChoose={(value) => answers.onAnswer({ kind: 'vote', step: 'vote', go: value === 1 })}
        />
      );
    case 'ask':
      return (
        <Options
          values={[0, 1, 2, 3]}
          label={(value) => optionName('ask', value)}
          onChoose={(count) => answers.onAnswer({ kind: 'ask', step: 'courtesy-ask', count })}
        />
      );
  }
}

interface PassFormProps extends DecisionFormProps {
  readonly decision: PendingDecision & { readonly kind: 'pass' };
}

function PassForm({ rack, decision, onAnswer, onCompare }: PassFormProps) {
  const places = useSignal<readonly number[]>([]);
  const blind = useSignal(0);
  const { step, count, blindAllowed } = decision;
  const tiles = rack.filter((_, place) => places.value.includes(place));
  const problem = passObjection(bagOf(rack), decision, tiles, blind.value);
  const pass: AnswerChoice = { kind: 'pass', step, tiles, blind: blind.value };
  const words = problem && (chooseMore(count - blind.value, tiles.length) || problem.message);
  return (
    <>
      <RackPicker
        rack={rack}
        chosen={places.value}
        onChange={(chosen) => {
          places.value = chosen;
        }}
      />
      {blindAllowed && (
        <Numbers
          name="blind"
          legend={QUESTION.blind}
          value={blind.value}
          label={(value) => optionName('blind', value)}
          onChange={(value) => {
            blind.value = value;
          }}
        />
      )}
      <p role="status">{words}</p>
      <div class="row">
        <button
          type="button"
          class="primary"
          aria-disabled={problem !== null}
          onClick={() => problem === null && onAnswer(pass)}
        >
          {QUESTION.answer}
        </button>
        {onCompare && (
          <button
            type="button"
            aria-disabled={problem !== null}
            onClick={() => problem === null && onCompare(pass)}
          >
            {QUESTION.compare}
          </button>
        )}
      </div>
    </>
  );
}

interface OptionsProps {
  readonly values: readonly number[];
  readonly label: (value: number) => string;
  readonly onChoose: (value: number) => void;
}

function Options({ values, label, onChoose }: OptionsProps) {
  return (
    <div class="row">
      {values.map((value) => (
        <button key={value} type="button" onClick={() => onChoose(value)}>
          {label(value)}
        </button>
      ))}
    </div>
  );
}
