// The exchange as a strip of one row: one button for each choice, with what was passed and its verdict.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { ChoiceReview, Review, Verdict } from '../../shared-engine/index.ts';
import { optionName } from '../room/step-names.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { choiceName, REVIEW } from './strings.ts';

/** How much of the four-part bar is filled; nothing is where nothing can be said. */
const BAR_LENGTHS: Readonly<Record<Verdict, number>> = {
  best: 4,
  'just-as-good': 4,
  'cant-say': 0,
  'a-little-worse': 2,
  costly: 1,
};

interface ChoiceStripProps {
  readonly review: Review;
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

export function ChoiceStrip({ review: { choices, story }, chosen, onChoose }: ChoiceStripProps) {
  const row = useRef<HTMLOListElement>(null);
  const isNew = useNewAnswers(choices, chosen);
  useEffect(() => showInRow(row.current, chosen), [chosen]);
  return (
    <ol class="choice-strip" ref={row}>
      {choices.map((choice, index) => {
        const { verdict } = story.choices[index]!;
        return (
          <li key={`${choice.kind}-${choice.step}`} class={choice.kind === 'blind' ? 'wide' : undefined}>
            <button
              type="button"
              aria-pressed={index === chosen}
              onClick={({ currentTarget }) => {
                onChoose(index);
                requestAnimationFrame(() => showStep(currentTarget));
              }}
            >
              <span class="choice-name">{choiceName(choice)}</span>
              <span class="choice-made">
                {choice.kind === 'pass' ? (
                  <TileRow tiles={choice.played.tiles} />
                ) : (
                  optionName(choice.kind, choice.played)
                )}
              </span>
              <span class="choice-verdict">
                {VERDICTS[verdict].name} {isNew(index) && <span class="new-answer">{REVIEW.newAnswer}</span>}
              </span>
              <VerdictBar verdict={verdict} />
            </button>
          </li>
        );
      })}
    </ol>
  );
}

function VerdictBar({ verdict }: { readonly verdict: Verdict }) {
  return (
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
  );
}

/** Which choices have got a deeper answer since the review was first seen, and have not been opened with it. */
function useNewAnswers(choices: readonly ChoiceReview[], chosen: number): (index: number) => boolean {
  const atFirst = useRef(choices.map(depthOf));
  const opened = useSignal<ReadonlySet<number>>(new Set());
  const isDeeper = (index: number) => depthOf(choices[index]!) !== atFirst.current[index];
  const seesNow = isDeeper(chosen) && !opened.value.has(chosen);
  useEffect(() => {
    if (seesNow) opened.value = new Set([...opened.value, chosen]);
  }, [seesNow, chosen]);
  return (index) => index !== chosen && isDeeper(index) && !opened.value.has(index);
}

function depthOf({ analysis }: ChoiceReview) {
  return analysis.depth;
}

/** Moves the row and nothing else on the page. */
function showInRow(row: HTMLElement | null, chosen: number): void {
  const step = row?.children[chosen];
  if (row && step instanceof HTMLElement)
    row.scrollTo({ left: step.offsetLeft - (row.clientWidth - step.offsetWidth) / 2 });
}

/** Brings the step under the strip into view, where little of it is. */
function showStep(button: HTMLElement): void {
  const step = button.closest('.choices')?.querySelector('.choice-detail');
  if (step && step.getBoundingClientRect().top > window.innerHeight * 0.6)
    button.closest('li')?.scrollIntoView({ block: 'start' });
}
