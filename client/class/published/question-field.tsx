// The words of a question to the teacher, with how much of them still fits.
import { PUBLISHED_LIMITS } from '../../../shared-engine/index.ts';
import { DRILL } from './strings.ts';

interface QuestionFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** What is wrong with it; null where nothing is. */
  readonly problem: string | null;
  readonly onText: (text: string) => void;
}

export function QuestionField({ id, label, value, problem, onText }: QuestionFieldProps) {
  const isFull = value.length >= PUBLISHED_LIMITS.letters;
  return (
    <>
      <label for={id}>{label}</label>
      <textarea
        id={id}
        rows={2}
        maxLength={PUBLISHED_LIMITS.letters}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-fits ${id}-problem`}
        onInput={(event) => onText(event.currentTarget.value)}
      />
      {/* Read out only when nothing more fits: a number at each letter would be noise. */}
      <p id={`${id}-fits`} class="aside" role={isFull ? 'status' : undefined}>
        {DRILL.fits(value.length)} {isFull && DRILL.full}
      </p>
      <p id={`${id}-problem`} class="notice" role="alert">
        {problem}
      </p>
    </>
  );
}
