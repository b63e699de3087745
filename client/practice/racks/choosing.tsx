// Before ten racks: which question, and of which racks.
import { useSignal } from '@preact/signals';
import type { MistakeCategory } from '../../../shared-engine/index.ts';
import type { RacksModel } from './model.ts';
import { habitWish, RACKS, type RackQuestion, WISHES } from './strings.ts';

const QUESTIONS = Object.keys(RACKS.questions) as readonly RackQuestion[];

interface ChoosingProps {
  readonly model: RacksModel;
  readonly problem: string | null;
  /** The habit that costs most of those that a first pass can show; null where none stands out. */
  readonly habit: MistakeCategory | null;
}

export function Choosing({ model, problem, habit }: ChoosingProps) {
  const question = useSignal<RackQuestion>('pass');
  const wish = useSignal(0);
  const isByHabit = wish.value === WISHES.length;
  const start = () =>
    model.start(
      question.value,
      isByHabit && habit !== null ? { tempts: habit } : { fits: WISHES[wish.value]?.wish ?? null },
    );
  return (
    <>
      <p>{RACKS.about}</p>
      <fieldset>
        <legend>{RACKS.question}</legend>
        {QUESTIONS.map((one) => (
          <label key={one} class="choice">
            <input
              type="radio"
              name="question"
              checked={question.value === one}
              onChange={() => {
                question.value = one;
              }}
            />
            <span>{RACKS.questions[one]}</span>
          </label>
        ))}
      </fieldset>
      <div class="field">
        <label for="wish">{RACKS.wish}</label>
        <select
          id="wish"
          value={wish.value}
          onChange={(event) => {
            wish.value = event.currentTarget.selectedIndex;
          }}
        >
          {WISHES.map(({ name }, place) => (
            <option key={name} value={place}>
              {name}
            </option>
          ))}
          <option value={WISHES.length}>{RACKS.byHabit}</option>
        </select>
        {isByHabit && <p class="aside">{habitWish(habit)}</p>}
      </div>
      {problem && (
        <p class="notice" role="alert">
          {problem}
        </p>
      )}
      <button type="button" class="primary" onClick={start}>
        {RACKS.start}
      </button>
    </>
  );
}
