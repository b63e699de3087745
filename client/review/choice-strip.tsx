// The exchange as a strip: one button for each choice, with its grade as words and as the fill of a bar.
import type { ChoiceReview } from '../../shared-engine/index.ts';
import { choiceName, gradeOf } from './strings.ts';

interface ChoiceStripProps {
  readonly choices: readonly ChoiceReview[];
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

export function ChoiceStrip({ choices, chosen, onChoose }: ChoiceStripProps) {
  return (
    <ol class="choice-strip">
      {choices.map((choice, index) => {
        const grade = gradeOf(choice);
        return (
          <li key={`${choice.kind}-${choice.step}`}>
            <button type="button" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
              <span class="choice-name">{choiceName(choice)}</span>
              <span class="choice-grade">{grade.words}</span>
              <svg class="grade-bar" viewBox="0 0 60 8" aria-hidden="true" focusable="false">
                {[0, 1, 2, 3].map((part) => (
                  <rect
                    key={part}
                    class={part < 4 - grade.level ? 'grade-full' : 'grade-rest'}
                    x={part * 15.5}
                    y="0.500"
                    width="13"
                    height="7"
                    rx="3.500"
                  />
                ))}
              </svg>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
