// What the judge says of one choice: a verdict and sentences for each of its parts, and all alternatives on one scale.
import type { ComponentChildren } from 'preact';
import type { AnswerChoice, LaidExchange } from '../../../shared-engine/index.ts';
import { JudgedChoice } from '../question/judged-choice.tsx';
import type { Judge, JudgedPart } from './judged.ts';
import { OWN_TILES } from './strings.ts';

interface JudgementViewProps {
  readonly judge: Judge;
  readonly exchange: LaidExchange;
  readonly choice: AnswerChoice;
  readonly title: string;
  readonly chart: Chart;
}

/** All alternatives to a choice that was played on, as a review shows them. */
export type Chart = (part: JudgedPart) => ComponentChildren;

export function JudgementView({ judge, exchange, choice, title, chart }: JudgementViewProps) {
  const judgement = judge.of(exchange, choice);
  if (judgement === null) return null;
  return (
    <section class="own-judgement" aria-label={title}>
      <h2>{title}</h2>
      <div aria-live="polite">
        {judgement.is === 'failed' && <p class="notice">{OWN_TILES.failed}</p>}
        {judgement.is === 'working' && <p>{OWN_TILES.working}</p>}
        {judgement.is !== 'failed' &&
          judgement.parts.map((part) => <Part key={part.choice.kind} part={part} chart={chart} />)}
      </div>
    </section>
  );
}

/** Nothing is told of a part before it has been played on, so that nothing told changes. */
function Part({ part, chart }: { readonly part: JudgedPart; readonly chart: Chart }) {
  if (part.choice.analysis.depth === 'quick') return null;
  return (
    <>
      <JudgedChoice {...part} />
      {chart(part)}
    </>
  );
}
