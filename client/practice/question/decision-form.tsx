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
import { RackPicker } from './rack-picker.tsx';
import { QUESTION } from './strings.ts';

interface DecisionFormProps {
  readonly rack: readonly Face[];
  readonly decision: PendingDecision;
  readonly onAnswer: (choice: AnswerChoice) => void;
}

export function DecisionForm({ rack, decision, onAnswer }: DecisionFormProps) {
  switch (decision.kind) {
    case 'pass':
      return <PassForm rack={rack} decision={decision} onAnswer={onAnswer} />;
    case 'vote':
      return (
        <Options
          values={[1, 0]}
          label={(value) => optionName('vote', value)}
          onChoose={(value) => onAnswer({ kind: 'vote', step: 'vote', go: value === 1 })}
        />
      );
    case 'ask':
      return (
        <Options
          values={[0, 1, 2, 3]}
          label={(value) => optionName('ask', value)}
          onChoose={(count) => onAnswer({ kind: 'ask', step: 'courtesy-ask', count })}
        />
      );
  }
}

interface PassFormProps extends DecisionFormProps {
  readonly decision: PendingDecision & { readonly kind: 'pass' };
}

function PassForm({ rack, decision, onAnswer }: PassFormProps) {
  const places = useSignal<readonly number[]>([]);
  const blind = useSignal(0);
  const { step, count, blindAllowed } = decision;
  const tiles = rack.filter((_, place) => places.value.includes(place));
  const problem = passObjection(bagOf(rack), decision, tiles, blind.value);
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
        <fieldset>
          <legend>{QUESTION.blind}</legend>
          <div class="row">
            {[0, 1, 2, 3].map((value) => (
              <label key={value} class="choice pill">
                <input
                  type="radio"
                  name="blind"
                  checked={blind.value === value}
                  onChange={() => {
                    blind.value = value;
                  }}
                />
                <span>{optionName('blind', value)}</span>
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <p role="status">{words}</p>
      <button
        type="button"
        class="primary"
        aria-disabled={problem !== null}
        onClick={() => problem === null && onAnswer({ kind: 'pass', step, tiles, blind: blind.value })}
      >
        {QUESTION.answer}
      </button>
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
