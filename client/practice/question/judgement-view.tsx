// What the judge says of one choice: a verdict and sentences for each of its parts, and all alternatives on one scale.
import type { ComponentChildren } from 'preact';
import type { AnswerChoice, SeatRecord } from '../../../shared-engine/index.ts';
import type { Judge, JudgedPart } from './judged.ts';
import { JudgedChoice } from './judged-choice.tsx';
import { QUESTION } from './strings.ts';

interface JudgementViewProps {
  readonly judge: Judge;
  /** Of the seat, before it chose. */
  readonly record: SeatRecord;
  readonly choice: AnswerChoice;
  readonly title: string;
  readonly chart: Chart;
}

/** All alternatives to a choice that was played on, as a review shows them. */
export type Chart = (part: JudgedPart) => ComponentChildren;

export function JudgementView({ judge, record, choice, title, chart }: JudgementViewProps) {
  const judgement = judge.of(record, choice);
  if (judgement === null) return null;
  return (
    <section class="judgement" aria-label={title}>
      <h2>{title}</h2>
      <div aria-live="polite">
        {judgement.is === 'failed' && <p class="notice">{QUESTION.failed}</p>}
        {judgement.is === 'working' && <p>{QUESTION.working}</p>}
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
