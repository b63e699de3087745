// A choice among a few numbers looked at again: go on or stop, tiles unseen, tiles across.
import type { NumberReview } from '../../../shared-engine/index.ts';
import { figure, lossWords, optionName, REVIEW } from '../../words/review.ts';
import { Scale } from './scale.tsx';

export function NumberChoice({ choice }: { readonly choice: NumberReview }) {
  const nearnessOf = (value: number) =>
    choice.options.find((option) => option.value === value)?.nearness ?? 0;
  return (
    <>
      <p class="verdict">{choice.words[0]}</p>
      <p class="verdict">{choice.words[1]}</p>
      <ul class="options">
        {choice.options.map(({ value }) => (
          <li key={value} class={value === choice.played ? 'option mine' : 'option'}>
            {optionName(choice.kind, value)}
            {value === choice.played && <span class="tag">{REVIEW.you}</span>}
            {value === choice.best && <span class="tag">{REVIEW.best}</span>}
          </li>
        ))}
      </ul>
      <figure>
        <figcaption>{lossWords(choice.loss)}</figcaption>
        <Scale
          values={choice.options.map(({ nearness }) => nearness)}
          played={nearnessOf(choice.played)}
          best={nearnessOf(choice.best)}
          words={`${choice.options.length} choices on one scale. ${lossWords(choice.loss)}`}
        />
      </figure>
      <details class="panel">
        <summary>{REVIEW.numbers}</summary>
        <dl class="figures">
          {choice.options.map(({ value, nearness }) => (
            <div key={value}>
              <dt>{optionName(choice.kind, value)}</dt>
              <dd>{figure(nearness)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}
