// What the judge says of one choice: a verdict and sentences for each of its parts, and all alternatives on one scale.
import type { ComponentChildren } from 'preact';
import type { AnswerChoice, LaidExchange } from '../../shared-engine/index.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Judge, JudgedPart } from './judged.ts';
import { OWN_TILES } from './strings.ts';

interface JudgementViewProps {
  readonly judge: Judge;
  readonly exchange: LaidExchange;
  readonly choice: AnswerChoice;
  readonly title: string;
  readonly tell: Tell;
}

/** Sentences and chart of a choice that was played on, as a review shows them. */
export type Tell = (part: JudgedPart) => ComponentChildren;

export function JudgementView({ judge, exchange, choice, title, tell }: JudgementViewProps) {
  const judgement = judge.of(exchange, choice);
  if (judgement === null) return null;
  return (
    <section class="own-judgement" aria-label={title}>
      <h2>{title}</h2>
      {choice.kind === 'pass' && choice.tiles.length > 0 && <TileRow tiles={choice.tiles} />}
      <div aria-live="polite">
        {judgement.is === 'failed' && <p class="notice">{OWN_TILES.failed}</p>}
        {judgement.is === 'working' && <p>{OWN_TILES.working}</p>}
        {judgement.is !== 'failed' &&
          judgement.parts.map((part) => <Part key={part.choice.kind} part={part} tell={tell} />)}
      </div>
    </section>
  );
}

/** Nothing is told of a part before it has been played on, so that nothing told changes. */
function Part({ part, tell }: { readonly part: JudgedPart; readonly tell: Tell }) {
  if (part.choice.analysis.depth === 'quick') return null;
  return (
    <article>
      <h3 class="verdict-name">{VERDICTS[part.story.verdict].name}</h3>
      {tell(part)}
    </article>
  );
}
