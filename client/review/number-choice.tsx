// The review of a choice among a few numbers: the vote, tiles passed blind, tiles asked for in the courtesy.
import type { NumberReview } from '../../shared-engine/index.ts';
import { optionName } from '../room/step-names.ts';
import { twoPlaces } from '../ui/numbers.ts';
import { Alternatives } from './alternatives.tsx';
import { DeepSentences, FirstAnswer } from './deep-analysis.tsx';
import { DeepNumbers } from './deep-numbers.tsx';
import { Scale } from './scale.tsx';
import { lossSentence, REVIEW } from './strings.ts';

export function NumberChoice({ choice }: { readonly choice: NumberReview }) {
  const { analysis } = choice;
  if (analysis.depth === 'quick') {
    return (
      <>
        <p class="verdict">{choice.sentences[0]}</p>
        <p class="verdict">{choice.sentences[1]}</p>
        <FirstScale choice={choice} />
        <FirstNumbers choice={choice} />
      </>
    );
  }
  return (
    <>
      <DeepSentences analysis={analysis} />
      <p class="verdict">{choice.sentences[0]}</p>
      <Alternatives kind={choice.kind} analysis={analysis} />
      <DeepNumbers kind={choice.kind} analysis={analysis} />
      <FirstAnswer>
        <p>{choice.sentences[1]}</p>
        <FirstScale choice={choice} />
      </FirstAnswer>
    </>
  );
}

function FirstScale({ choice }: { readonly choice: NumberReview }) {
  const nearnessOf = (value: number) =>
    choice.options.find((option) => option.value === value)?.nearness ?? 0;
  return (
    <>
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
        <figcaption>{lossSentence(choice.loss)}</figcaption>
        <Scale
          values={choice.options.map(({ nearness }) => nearness)}
          played={nearnessOf(choice.played)}
          best={nearnessOf(choice.best)}
          words={`${choice.options.length} choices on one scale. ${lossSentence(choice.loss)}`}
        />
      </figure>
    </>
  );
}

function FirstNumbers({ choice }: { readonly choice: NumberReview }) {
  return (
    <details class="panel">
      <summary>{REVIEW.numbers}</summary>
      <dl class="figures">
        {choice.options.map(({ value, nearness }) => (
          <div key={value}>
            <dt>{optionName(choice.kind, value)}</dt>
            <dd>{twoPlaces(nearness)}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
