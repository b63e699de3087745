// The review in each state: on its way, first answers, deep answers with all five verdicts, and its parts alone.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Review } from '../../../shared-engine/index.ts';
import { ChoiceStrip } from '../../review/choice-strip.tsx';
import { ProgressChart } from '../../review/progress-chart.tsx';
import { ReviewScreen } from '../../review/review-screen.tsx';
import { seatedAt } from '../../room/room.ts';
import { deepened } from './deep-review.ts';
import { Part, State } from './frame.tsx';
import { appAt, type PlayedRound, roomAt } from './stage.ts';

export function ReviewsPart({ round: { closed, review } }: { readonly round: PlayedRound }) {
  const seated = seatedAt(closed);
  if (!seated) return null;
  const app = appAt('/t/Q7MK3XWD');
  const half = deepened(review, 4);
  const moments = [
    ['review-working', roomAt(closed)],
    ['review-first', roomAt(closed, { review })],
    ['review-half', roomAt(closed, { review: half })],
    ['review-deep', roomAt(closed, { review: deepened(review) })],
  ] as const;
  return (
    <>
      <Part name="strip">
        <State name="five verdicts">
          <ChoiceStrip review={deepened(review)} chosen={1} onChoose={() => {}} />
        </State>
        <State name="answers that have just come">
          <NewAnswers first={review} />
        </State>
        <State name="how far away, and wins">
          <ProgressChart review={half} />
          <ProgressChart review={deepened(review)} />
        </State>
      </Part>
      {moments.map(([name, room]) => (
        <Part key={name} name={name}>
          <ReviewScreen app={app} room={room} seated={seated} />
        </Part>
      ))}
    </>
  );
}

/** First answers are seen, then deep ones come: each step but the one that is open is marked. */
function NewAnswers({ first }: { readonly first: Review }) {
  const shown = useSignal(first);
  useEffect(() => {
    shown.value = deepened(first);
  }, [first, shown]);
  return <ChoiceStrip review={shown.value} chosen={1} onChoose={() => {}} />;
}
