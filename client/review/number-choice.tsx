// The review of a choice among a few numbers: the vote, tiles passed blind, tiles asked for in the courtesy.
import type { ChoiceStory, NumberReview } from '../../shared-engine/index.ts';
import { optionName } from '../room/step-names.ts';
import { twoPlaces } from '../ui/numbers.ts';
import { Alternatives } from './alternatives.tsx';
import { Sentences } from './choice-sentences.tsx';
import { DeepNumbers } from './deep-numbers.tsx';
import { Scale } from './scale.tsx';
import { lossSentence, REVIEW } from './strings.ts';

interface NumberChoiceProps {
  readonly choice: NumberReview;
  readonly story: ChoiceStory;
}

export function NumberChoice({ choice, story }: NumberChoiceProps) {
  const { kind, analysis } = choice;
  return (
    <>
      <Sentences story={story} />
      {analysis.depth === 'deep' ? (
        <>
          <Alternatives kind={kind} analysis={analysis} rows={story.rows} />
          <DeepNumbers kind={kind} analysis={analysis} rows={story.rows} />
        </>
      ) : (
        <>
          <FirstScale choice={choice} />
          <FirstNumbers choice={choice} />
        </>
      )}
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
