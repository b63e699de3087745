// How a review was worked out: one sentence, and under a heading each what the numbers rest on.
import { type MethodPart, methodParts, type Review } from '../../shared-engine/index.ts';
import { METHOD_WORDS, REVIEW } from './strings.ts';

export function MethodPanel({ review }: { readonly review: Review }) {
  const parts = methodParts(review.method);
  const isDeep = parts.some(({ kind }) => kind === 'deep');
  return (
    <details class="panel">
      <summary>{REVIEW.method}</summary>
      <p>{isDeep ? METHOD_WORDS.playedOn : METHOD_WORDS.compared}</p>
      {parts.map((part) => (
        <Part key={part.kind} part={part} />
      ))}
    </details>
  );
}

/** What has no heading is short, or was written by another version. */
function Part({ part: { kind, text, points } }: { readonly part: MethodPart }) {
  if (kind === 'reduced' || kind === 'whole') return <p>{text}</p>;
  return (
    <details>
      <summary>{METHOD_WORDS.headings[kind]}</summary>
      <dl class="method-points">
        {points.map(({ title, sentences }) => (
          <div key={title}>
            <dt>{title}</dt>
            {sentences.map((sentence) => (
              <dd key={sentence}>{sentence}</dd>
            ))}
          </div>
        ))}
      </dl>
    </details>
  );
}
