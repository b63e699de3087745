// What the judge says of one choice: a verdict and sentences for each of its parts, and all alternatives on one scale.
import type { AnswerChoice, LaidExchange } from '../../shared-engine/index.ts';
import { Alternatives } from '../review/alternatives.tsx';
import { Sentences } from '../review/choice-sentences.tsx';
import { VERDICTS } from '../room/verdicts.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import type { Judge, JudgedPart } from './judged.ts';
import { OWN_TILES } from './strings.ts';

interface JudgementViewProps {
  readonly judge: Judge;
  readonly exchange: LaidExchange;
  readonly choice: AnswerChoice;
  readonly title: string;
}

export function JudgementView({ judge, exchange, choice, title }: JudgementViewProps) {
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
          judgement.parts.map((part) => <Part key={part.choice.kind} part={part} />)}
      </div>
    </section>
  );
}

/** Nothing is told of a part before it has been played on, so that nothing told changes. */
function Part({ part: { choice, story } }: { readonly part: JudgedPart }) {
  const { analysis, kind } = choice;
  if (analysis.depth === 'quick') return null;
  return (
    <article>
      <h3 class="verdict-name">{VERDICTS[story.verdict].name}</h3>
      <Sentences story={story} />
      <Alternatives kind={kind} analysis={analysis} rows={story.rows} />
    </article>
  );
}
