// The exchange as a strip: one button for each choice, with its verdict as words and as the fill of a bar.
import type { Review, Verdict } from '../../shared-engine/index.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { choiceName } from './strings.ts';

/** How much of the four-part bar is filled. */
const BAR_LENGTHS: Readonly<Record<Verdict, number>> = {
  best: 4,
  'just-as-good': 4,
  'cant-say': 3,
  'a-little-worse': 2,
  costly: 1,
};

interface ChoiceStripProps {
  readonly review: Review;
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

export function ChoiceStrip({ review: { choices, story }, chosen, onChoose }: ChoiceStripProps) {
  return (
    <ol class="choice-strip">
      {choices.map((choice, index) => {
        const { verdict } = story.choices[index]!;
        return (
          <li key={`${choice.kind}-${choice.step}`}>
            <button type="button" aria-pressed={index === chosen} onClick={() => onChoose(index)}>
              <span class="choice-name">{choiceName(choice)}</span>
              <span class="choice-verdict">{VERDICTS[verdict].name}</span>
              <svg class="verdict-bar" viewBox="0 0 60 8" aria-hidden="true" focusable="false">
                {[0, 1, 2, 3].map((part) => (
                  <rect
                    key={part}
                    class={part < BAR_LENGTHS[verdict] ? 'verdict-full' : 'verdict-rest'}
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
