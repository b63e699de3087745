// One group of a hand by itself: how many, what it means, its place.
import { canonicalPattern, type PatternBody } from '../../../shared-engine/index.ts';
import { type Answers, type Kind, kindsOf, meaningOf, meantAs, type Shown } from './meaning.ts';
import { ASK_ONE, GROUP } from './strings.ts';

interface GroupPanelProps {
  readonly shown: Shown;
  readonly nth: number;
  readonly onChange: (shown: Shown, nth: number | null) => void;
}

export function GroupPanel({ shown, nth, onChange }: GroupPanelProps) {
  const { pattern, faces } = shown;
  const group = pattern.groups[nth];
  if (!group) return null;
  const resized = (step: -1 | 1) => {
    const size = Math.min(6, Math.max(1, group.size + step));
    const groups = pattern.groups.map((known, other) => (other === nth ? { ...known, size } : known));
    onChange({ pattern: { ...pattern, groups }, faces }, nth);
  };
  const move = (step: -1 | 1) => {
    const to = nth + step;
    if (to < 0 || to >= faces.length) return;
    onChange(
      reordered(shown, (list) => moved(list, nth, to)),
      to,
    );
  };
  const meaning = meaningOf(group.tile);
  return (
    <section class="group-panel" aria-label={GROUP.title(nth + 1)}>
      <div class="row">
        <button type="button" aria-label={GROUP.fewer} onClick={() => resized(-1)}>
          −
        </button>
        <output>{group.size} ×</output>
        <button type="button" aria-label={GROUP.more} onClick={() => resized(1)}>
          +
        </button>
        <button type="button" aria-label={GROUP.left} onClick={() => move(-1)}>
          ←
        </button>
        <button type="button" aria-label={GROUP.right} onClick={() => move(1)}>
          →
        </button>
        <button
          type="button"
          onClick={() =>
            onChange(
              reordered(shown, (list) => list.filter((_, other) => other !== nth)),
              null,
            )
          }
        >
          {GROUP.remove}
        </button>
        <button type="button" onClick={() => onChange(shown, null)}>
          {GROUP.done}
        </button>
      </div>
      {kindsOf(group.tile).map((kind) => (
        <Question
          key={kind}
          name={`group-${kind}`}
          kind={kind}
          words={ASK_ONE}
          now={meaning[kind]}
          onAnswer={(answer) => onChange(meantAs(shown, nth, { ...meaning, ...answer }), nth)}
        />
      ))}
    </section>
  );
}

interface QuestionProps {
  readonly name: string;
  readonly kind: Kind;
  readonly words: typeof ASK_ONE;
  /** Null where the tiles are meant in several ways. */
  readonly now: string | null;
  readonly onAnswer: (answer: Partial<Answers>) => void;
  /** Answers that are not offered here. */
  readonly without?: string;
}

export function Question({ name, kind, words, now, onAnswer, without }: QuestionProps) {
  const { title, answers } = words[kind];
  return (
    <fieldset class="row question-row">
      <legend>{title}</legend>
      {Object.entries(answers)
        .filter(([answer]) => answer !== without)
        .map(([answer, text]) => (
          <label key={answer} class="choice pill">
            <input
              type="radio"
              name={name}
              checked={now === answer}
              onChange={() => onAnswer({ [kind]: answer })}
            />
            <span>{text}</span>
          </label>
        ))}
    </fieldset>
  );
}

/** Groups and their faces, in another order or fewer of them. */
function reordered({ pattern, faces }: Shown, change: <T>(list: readonly T[]) => T[]): Shown {
  const groups: PatternBody['groups'] = change(pattern.groups);
  return { pattern: canonicalPattern({ ...pattern, groups }), faces: change(faces) };
}

function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const rest = list.filter((_, place) => place !== from);
  rest.splice(to, 0, list[from]!);
  return rest;
}
