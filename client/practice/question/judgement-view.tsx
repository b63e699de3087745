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
  /** Whose pass it is; one's own where left out. */
  readonly whose?: string;
}

/** All alternatives to a choice that was played on, as a review shows them. */
export type Chart = (part: JudgedPart) => ComponentChildren;

export function JudgementView({ judge, record, choice, title, chart, whose }: JudgementViewProps) {
  const judgement = judge.of(record, choice);
  if (judgement === null) return null;
  return (
    <section class="judgement" aria-label={title}>
      <h2>{title}</h2>
      <div aria-live="polite">
        {judgement.is === 'failed' && <p class="notice">{QUESTION.failed}</p>}
        {judgement.is === 'working' && <p>{QUESTION.working}</p>}
        {judgement.is !== 'failed' &&
          judgement.parts.map((part) => (
            <Part key={part.choice.kind} part={part} chart={chart} whose={whose} />
          ))}
      </div>
    </section>
  );
}

interface PartProps {
  readonly part: JudgedPart;
  readonly chart: Chart;
  readonly whose: string | undefined;
}

/** Nothing is told of a part before it has been played on, so that nothing told changes. */
function Part({ part, chart, whose }: PartProps) {
  if (part.choice.analysis.depth === 'quick') return null;
  return (
    <>
      <JudgedChoice {...part} whose={whose} />
      {chart(part)}
    </>
  );
}
